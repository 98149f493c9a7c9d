/**
 * Property tests start from one seed, so that a run of all tests on the same code says the same twice. To look further,
 * run with `PROPERTY_SEED=random`, or with the seed that a failure named.
 */
import fc from 'fast-check';

const asked = process.env['PROPERTY_SEED'] ?? '20261125';
if (asked !== 'random') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(asked) });
