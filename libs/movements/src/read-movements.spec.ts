import { describe, expect, it } from 'vitest';
import { readMovements } from './index.js';

const departure = 'MVT\nZZ200/21.QABAX.QXA\nAD1100/1115';
const receivedAt = '2026-01-21T11:20:00Z';

describe('reading movements', () => {
  it('tells where in which transmission something could not be read', () => {
    const { tray } = readMovements([
      { text: departure, receivedAt },
      { text: `\n\nMVT\nZZ201/21.QABBX.QXA\nAD1100/1115\nXYZ\nDL72`, receivedAt },
    ]);
    expect(tray).toEqual([
      {
        reason: 'element',
        sentence: '"DL72" is no list of one or two codes and as many durations.',
        place: { transmission: 2, line: 7 },
        text: 'MVT\nZZ201/21.QABBX.QXA\nAD1100/1115\nXYZ\nDL72',
        receivedAt,
      },
    ]);
  });

  it('keeps the place and the text of a message, and its receipt as UTC', () => {
    const { messages } = readMovements(`\n${departure}\n`, { receivedAt: '2026-01-21T12:20:30+01:00' });
    expect(messages).toMatchObject([
      { text: departure, place: { transmission: 1, line: 2 }, receivedAt: '2026-01-21T11:20:30Z' },
    ]);
  });

  it('shows a text delivered twice once, also in the tray', () => {
    const { messages, tray } = readMovements(`${departure}\n\nnonsense\n\n${departure}\n\nnonsense`, { receivedAt });
    expect([messages.length, tray.length]).toEqual([1, 1]);
  });

  it('takes the same text a month later for another flight', () => {
    const later = { text: departure, receivedAt: '2026-02-21T11:20:00Z' };
    expect(readMovements([{ text: departure, receivedAt }, later]).legs).toHaveLength(2);
  });

  it('uses none of hundreds of different messages for one flight', () => {
    const all = Array.from({ length: 201 }, (_, index) => `${departure}\nPX${index}`).join('\n\n');
    const { legs, tray } = readMovements(all, { receivedAt });
    expect(legs).toEqual([]);
    expect(tray).toHaveLength(201);
    expect(tray[0]?.reason).toBe('too-many');
  });

  it('dates nothing without a receipt', () => {
    expect(readMovements(departure).tray).toMatchObject([{ reason: 'receipt', receivedAt: null }]);
  });

  it.each([
    [{ receivedAt: 'noon' }, 'The receipt "noon" is no instant such as 2026-01-21T11:20:00Z.'],
    [{ receivedAt: '2026-02-30T11:20:00Z' }, 'is no instant'],
    [{ receivedAt, daysBack: 1.5 }, 'daysBack 1.5 is not a whole number from 0 up.'],
    [{ receivedAt, daysBack: 26 }, 'A window of 26 days back and 1 ahead holds a day twice.'],
    [{ receivedAt, base: 'Nowhere/Else' }, 'The base "Nowhere/Else" is neither UTC nor a zone.'],
  ])('refuses the mistake %j of a caller', (options, sentence) => {
    expect(() => readMovements(departure, options)).toThrow(sentence);
  });

  it('stays quick on a megabyte of hostile text', () => {
    for (const piece of [
      '\u0001',
      'MVT\n',
      `MVT\nZZ1/21.QABAX.QXA\nPX${'1/'.repeat(50)}\n`,
      'DLA/////',
      'A',
      'SI ',
    ]) {
      const { legs } = readMovements(piece.repeat(Math.ceil(1_000_000 / piece.length)), { receivedAt });
      expect(legs).toEqual([]);
    }
  });
});
