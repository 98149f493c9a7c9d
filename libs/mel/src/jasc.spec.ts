import { describe, expect, it } from 'vitest';
import { CHAPTERS, JASC_SYSTEMS, systemOf } from './jasc.js';

// Source: FAA JASC Code Table and Definitions, 27 October 2008. SEEN.
describe('the JASC table', () => {
  it('holds 51 chapters and 547 components, each of a chapter that it holds', () => {
    expect(CHAPTERS).toHaveLength(51);
    expect(JASC_SYSTEMS).toHaveLength(598);
    for (const { code, chapter } of JASC_SYSTEMS) expect(code.startsWith(chapter)).toBe(true);
  });

  it('names chapters and components as printed', () => {
    expect(systemOf('32')).toEqual({
      code: '32',
      title: 'LANDING GEAR',
      chapter: '32',
      chapterTitle: 'LANDING GEAR',
    });
    expect(systemOf('3241')?.title).toBe('BRAKE ANTI-SKID SECTION');
    expect(systemOf('7830')).toMatchObject({ title: 'THRUST REVERSER', chapterTitle: 'ENGINE EXHAUST' });
    expect(systemOf('3445')?.title).toBe('AIR COLLISION AVOIDANCE SYSTEM (TCAS)');
  });

  it('has no code that is not printed', () => {
    for (const code of ['', '99', '3299', '324', '__proto__', '32 ']) expect(systemOf(code)).toBeNull();
  });
});
