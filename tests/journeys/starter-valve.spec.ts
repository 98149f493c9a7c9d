/**
 * One defect from write-up to release, told in order, by the people whose work it is and through HTTP alone.
 *
 * A start valve does not open. The crew writes it up, the technician finds the entry, asks what it would cost, defers it,
 * caps the connector and fits the placard; the aircraft flies where somebody can open the valve by hand and not where
 * nobody can; it is mended, and cannot be released until the cap is off. Each step needs the one before it.
 */
import { afterAll, beforeAll, describe } from 'vitest';
import { toldUntilItFlies } from './starter-valve.deferral.js';
import { toldUntilItIsReleased } from './starter-valve.release.js';
import { begin, story } from './starter-valve.scene.js';

beforeAll(begin);

afterAll(() => story.server.stop());

describe('the life of a defect', () => {
  toldUntilItFlies();
  toldUntilItIsReleased();
});
