/** The notice of an extension as a page to print: everything the authority is told, and nothing from elsewhere in it. */
import { basisInWords, type DefectLife, type Extended, replay } from '#deferrals';
import type { AircraftRow, DefectRow, ExtensionRow, OperatorRow } from '#store';
import { defectNumber } from '../defects/views.js';
import { Html, html } from '../http/html.js';
import { noticeState } from './notice-state.js';
import { sayDay, sayInstant } from './say-time.js';

export interface NoticeOf {
  row: ExtensionRow;
  act: Extended;
  life: DefectLife;
  defect: DefectRow;
  aircraft: AircraftRow;
  operator: OperatorRow;
  now: string;
}

const STYLE = new Html(`
  body { font: 11pt/1.45 serif; max-width: 45em; margin: 2em auto; padding: 0 1em; color: #000; background: #fff; }
  h1 { font-size: 1.4em; margin: 0 0 .2em; }
  h2 { font-size: 1.1em; margin: 1.6em 0 .4em; }
  table { border-collapse: collapse; width: 100%; }
  th, td { text-align: left; vertical-align: top; padding: .3em .6em .3em 0; border-bottom: 1px solid #999; }
  th { width: 14em; font-weight: 600; }
  .invented, .standing { border: 2px solid #000; padding: .4em .8em; font-weight: 600; }
  .pre { white-space: pre-wrap; }
  @page { margin: 18mm; }
  @media print { .standing { display: none; } body { max-width: none; margin: 0; padding: 0; } tr, h2 { break-inside: avoid; break-after: avoid; } }
`);

export function noticeDocument(of: NoticeOf): Html {
  const { row, act, operator, aircraft, defect } = of;
  const { base } = operator;
  const number = defectNumber(aircraft, defect);
  const state = noticeState(row, of.now, base);
  return html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width" />
        <title>Notice of extension, ${number}</title>
        <style>
          ${STYLE}
        </style>
      </head>
      <body>
        ${operator.invented ? html`<p class="invented">INVENTED for demonstration. Never for flight.</p>` : null}
        <h1>Notice of an extended rectification interval</h1>
        <p>
          ${operator.name} (${operator.code}), aircraft ${aircraft.registration}, type ${aircraft.type}, defect
          ${number}
        </p>
        <p class="standing">Notice: ${state.words}</p>
        <h2>The extension</h2>
        <table>
          ${line('Basis', basisOf(of.life, act))} ${line('Recorded in the log', sayInstant(of.life.recordedAt, base))}
          ${line('Last day before', dayOf(row.lastDayBefore, row.endsBefore, base))}
          ${line('Last day now', dayOf(row.lastDay, row.endsAt, base))} ${line('Days are counted in', base)}
          ${line('Granted', sayInstant(row.decidedAt ?? act.enteredAt, base))}
          ${line('Under the approved procedure', act.procedure)}
          ${act.agreement === null ? null : line("Authority's agreement", act.agreement)}
          ${line('The authority is told by', row.noticeDueAt === null ? 'no time is set' : sayInstant(row.noticeDueAt, base))}
        </table>
        <h2>Why</h2>
        <table>
          ${line('Defect', of.life.description)} ${line("Reason, outside the operator's control", row.reason)}
          ${line('Why not rectified in time', row.whyNotFixed)} ${line('Plan', row.plan)}
          ${row.parts === null ? null : line('Parts', row.parts)}
        </table>
        <h2>Who</h2>
        <table>
          ${line('Asked for by', `${act.request.by.name}, ${sayInstant(row.askedAt, base)}`)}
          ${line('Granted by', `${act.by.name}, licence ${act.by.licence}, authorisation ${act.by.authorisation.number} of ${act.by.organisation.name} (${act.by.organisation.approval})`)}
          ${line('Statement signed', act.by.statement)}
        </table>
        <h2>Arithmetic</h2>
        <p>${act.limits.flatMap(({ clock }) => clock?.explanation ?? []).join(' ')}</p>
        <h2>Told</h2>
        <table>
          ${line('Sent', toldOf(row.sentAt, row.sentReference, base))}
          ${line('Acknowledged', toldOf(row.acknowledgedAt, row.acknowledgedReference, base))}
        </table>
        <p>
          Written ${sayInstant(of.now, base)}. This document supports, and never replaces, the approved MEL and the
          operator's approved procedure; local regulation prevails.
        </p>
      </body>
    </html> `;
}

function line(name: string, text: string): Html {
  return html`<tr>
    <th scope="row">${name}</th>
    <td class="pre">${text}</td>
  </tr>`;
}

/** The basis that was extended, whatever was signed since. */
function basisOf({ acts }: DefectLife, { id: granted }: Extended): string {
  const { deferral } = replay(acts.slice(0, acts.findIndex(({ id }) => id === granted) + 1));
  return deferral === null ? 'none' : basisInWords(deferral.basis);
}

function dayOf(lastDay: string | null, endsAt: string | null, base: string): string {
  const end = endsAt === null ? '' : `before ${sayInstant(endsAt, base)}`;
  return lastDay === null ? end || 'counted' : `${sayDay(lastDay)}${end === '' ? '' : `, that is ${end}`}`;
}

function toldOf(at: string | null, reference: string | null, base: string): string {
  return at === null ? 'not yet' : `${sayInstant(at, base)}, reference ${reference ?? '-'}`;
}
