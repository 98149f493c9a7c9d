import { Inject, Injectable } from '@nestjs/common';
import type { ExtensionRow, Store, Tx } from '#store';
import type { Calling } from '../defects/acting.js';
import { livesOf } from '../defects/defect-book.js';
import { DispatchService } from '../dispatch/dispatch.service.js';
import { seenVersion } from '../http/headers.js';
import type { Html } from '../http/html.js';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import type { NoticeBody } from './bodies.js';
import { extensionLines } from './extension-lines.js';
import { noticeDocument } from './notice-document.js';

const SHOWN = 500;

/** The register of extensions, and the notice that each granted one owes the authority. */
@Injectable()
export class NoticesService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly dispatch: DispatchService,
  ) {}

  async register(tx: Tx) {
    const { base } = (await this.dispatch.settings(tx)).deferral;
    const at = this.now();
    const rows = await tx.extensions.latest(SHOWN + 1);
    const extensions = await extensionLines(tx, rows.slice(0, SHOWN), { now: at, base });
    const overdue = extensions.filter(({ notice }) => notice?.state === 'overdue').length;
    return { at, base, extensions, overdue, more: rows.length > SHOWN };
  }

  async one(tx: Tx, id: string) {
    const row = await extensionOr404(tx, id);
    return { version: row.version, body: { extension: await this.line(tx, row) } };
  }

  /** The notice as a document to print and send. Only a granted extension has one. */
  async document(tx: Tx, id: string): Promise<Html> {
    const row = await extensionOr404(tx, id);
    const defect = await tx.defects.get(row.defectId);
    const aircraft = defect ? await tx.aircraft.get(defect.aircraftId) : null;
    const [opened] = defect ? await livesOf(tx, [defect]) : [];
    const act = opened?.life.extensions.find((one) => one.id === row.actId);
    if (row.state !== 'granted' || !defect || !aircraft || !opened || !act) {
      throw new Problem('not-found', 'Only an extension that was granted has a notice.');
    }
    const operator = await tx.operators.current();
    return noticeDocument({ row, act, life: opened.life, defect, aircraft, operator, now: this.now() });
  }

  /** The notice was sent, or acknowledged: each once, in that order, with its reference. */
  note(calling: Calling, id: string, body: NoticeBody): Promise<object> {
    const { session, request, reply } = calling;
    return once(this.store, session, request, reply, async (tx) => {
      const row = await extensionOr404(tx, id);
      const seen = seenVersion(request);
      if (row.version !== seen) {
        throw new Problem('changed-meanwhile', `The extension is at version ${row.version}, not ${seen}.`);
      }
      const now = this.now();
      const at = new Date(body.at).toISOString();
      admitStep(row, body.what, at, now);
      const { personId } = session;
      const step =
        body.what === 'sent'
          ? { sentBy: personId, sentAt: at, sentReference: body.reference }
          : { acknowledgedBy: personId, acknowledgedAt: at, acknowledgedReference: body.reference };
      await tx.extensions.change(id, row.version, step);
      await this.record(tx, row, body, personId, now);
      const after = await extensionOr404(tx, id);
      return { status: 200, body: { extension: await this.line(tx, after) }, version: after.version };
    });
  }

  private async record(tx: Tx, row: ExtensionRow, body: NoticeBody, who: string, now: string): Promise<void> {
    const defect = await tx.defects.get(row.defectId);
    const aircraft = defect ? await tx.aircraft.get(defect.aircraftId) : null;
    await tx.record.append({
      who,
      authorisation: null,
      organisation: null,
      what: `extension.notice-${body.what}`,
      aircraft: aircraft && { id: aircraft.id, registration: aircraft.registration },
      times: { occurredAt: body.at, enteredAt: now },
      payload: { number: defect?.number ?? null, extension: row.id, reference: body.reference },
    });
  }

  private async line(tx: Tx, row: ExtensionRow) {
    const { base } = (await this.dispatch.settings(tx)).deferral;
    const [line] = await extensionLines(tx, [row], { now: this.now(), base });
    return line;
  }
}

async function extensionOr404(tx: Tx, id: string): Promise<ExtensionRow> {
  const row = await tx.extensions.get(id);
  if (!row) throw new Problem('not-found', `There is no extension ${id} here.`);
  return row;
}

/** Throws Problem. */
function admitStep(row: ExtensionRow, what: NoticeBody['what'], at: string, now: string): void {
  if (row.state !== 'granted') {
    throw new Problem('notice-out-of-order', 'Only an extension that was granted owes a notice.');
  }
  if (what === 'sent' && row.sentAt !== null) throw twice('sent', row.sentAt);
  if (what === 'acknowledged' && row.acknowledgedAt !== null) throw twice('acknowledged', row.acknowledgedAt);
  if (what === 'acknowledged' && row.sentAt === null) {
    throw new Problem('notice-out-of-order', 'Nothing was sent yet that the authority could acknowledge.');
  }
  if (Date.parse(at) > Date.parse(now)) throw wrongTime(`${at} lies in the future`);
  const from = what === 'sent' ? row.decidedAt : row.sentAt;
  if (from !== null && Date.parse(at) < Date.parse(from)) {
    throw wrongTime(`${at} is before ${what === 'sent' ? 'it was granted' : 'it was sent'}, ${from}`);
  }
}

function twice(what: string, at: string): Problem {
  return new Problem('notice-out-of-order', `The notice stands as ${what} at ${at}; that is not entered twice.`);
}

function wrongTime(reason: string): Problem {
  return new Problem('invalid-input', reason, { errors: [{ pointer: '/at', reason }] });
}
