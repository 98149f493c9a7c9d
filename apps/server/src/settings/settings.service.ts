import { createHash } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { OperatorRow, Store, Tx } from '#store';
import type { Calling } from '../defects/acting.js';
import { seenVersion } from '../http/headers.js';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, STORE, TZDB } from '../http/tokens.js';
import { settingsOf } from '../people/operator-settings.js';
import { keepSignature, signedPart } from '../people/kept-signature.js';
import type { Proof } from '../people/proof.js';
import { SignInService } from '../people/sign-in.service.js';
import type { ChangeSettingsBody, SettingChangeBody } from './bodies.js';
import { type Change, changed, type Changed } from './changing.js';
import { type Effect, EffectsService } from './effects.service.js';
import { settingLines } from './setting-lines.js';
import { presetChosen } from './settled.js';

const MOST_NAMED = 12;

interface Previewed extends Changed {
  effects: Effect[];
  /** What is to be signed; null where nothing open reads otherwise. */
  statement: string | null;
}

/**
 * What the operator settled, and changing it. What was signed is never moved: before a change takes effect it lists the
 * open deadlines and answers that read otherwise, and is signed when there are any.
 */
@Injectable()
export class SettingsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(TZDB) private readonly tzdb: string,
    private readonly signIn: SignInService,
    private readonly effects: EffectsService,
  ) {}

  async view(tx: Tx) {
    const operator = await tx.operators.current();
    return { version: operator.version, body: this.viewOf(operator) };
  }

  async preview(tx: Tx, changes: readonly SettingChangeBody[]): Promise<object> {
    const operator = await tx.operators.current();
    const previewed = await this.previewed(tx, operator, changes);
    const { statement, effects } = previewed;
    return { at: this.now(), changes: previewed.changes, effects, statement };
  }

  async change(calling: Calling, { changes, sign }: ChangeSettingsBody): Promise<object> {
    const { session, request, reply } = calling;
    const proof = sign ? await this.signIn.proveAgain(session, sign, request) : null;
    return once(this.store, session, request, reply, async (tx) => {
      const operator = await tx.operators.current();
      const seen = seenVersion(request);
      if (operator.version !== seen) {
        throw new Problem('changed-meanwhile', `The settings are at version ${operator.version}, not ${seen}.`);
      }
      const previewed = await this.previewed(tx, operator, changes);
      if (previewed.changes.length === 0) {
        throw new Problem('invalid-input', 'Nothing would change.', {
          errors: [{ pointer: '/changes', reason: 'every value is as it stands' }],
        });
      }
      this.admitSignature(previewed, sign?.statement ?? null);
      const { settings, base } = previewed.operator;
      await tx.operators.changeSettings(operator.version, settings, base);
      await this.record(tx, calling, previewed, proof);
      const after = await tx.operators.current();
      return { status: 200, body: this.viewOf(after), version: after.version };
    });
  }

  private viewOf(operator: OperatorRow) {
    return { at: this.now(), preset: presetChosen(operator), settings: settingLines(operator) };
  }

  private async previewed(tx: Tx, operator: OperatorRow, asked: readonly SettingChangeBody[]): Promise<Previewed> {
    const after = changed(operator, asked);
    const [was, is] = [settingsOf(operator, this.tzdb), settingsOf(after.operator, this.tzdb)];
    const effects = await this.effects.of(tx, was, is, this.now());
    const statement = effects.length === 0 ? null : statementOf(operator, after.changes, effects);
    return { ...after, effects, statement };
  }

  private admitSignature({ statement, changes, effects }: Previewed, shown: string | null): void {
    if (statement === null || shown === statement) return;
    if (shown === null) {
      const detail = `${effects.length} open deadlines, extensions or answers would read otherwise.`;
      throw new Problem('settings-need-signature', detail, { changes, effects, statement });
    }
    throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
  }

  private async record(
    tx: Tx,
    { session }: Calling,
    { changes, effects, statement }: Previewed,
    proof: Proof | null,
  ): Promise<void> {
    const now = this.now();
    const person = session.personId;
    const authorisation = { roles: session.roles };
    const role = session.roles[0] ?? 'administrator';
    const signature = { person, role, ...proof, authorisation, signedAt: now };
    const given = statement && proof ? { ...signature, ...proof, statement } : null;
    const entry = await tx.record.append({
      who: person,
      authorisation: null,
      organisation: null,
      what: 'settings.changed',
      aircraft: null,
      times: { enteredAt: now },
      payload: { changes, effects, ...(given === null ? {} : { signature: signedPart(given) }) },
    });
    if (given !== null) await keepSignature(tx, entry, given);
  }
}

/**
 * Bound to the whole list by its digest: if anything in it changes until it is signed, it is shown again. What is left of an
 * interval changes by the minute, so of that the list alone is bound, and not how it reads.
 */
function statementOf({ name }: OperatorRow, changes: readonly Change[], effects: readonly Effect[]): string {
  const named = changes
    .slice(0, MOST_NAMED)
    .map(({ title, before, after }) => `${title}: ${short(after)} (was ${short(before)})`);
  const more = changes.length > MOST_NAMED ? `; and ${changes.length - MOST_NAMED} more` : '';
  const bound = effects.map((one) => (one.about === 'use' ? [one.registration, one.of] : one));
  const digest = sha256Of([changes, bound]).slice(0, 16);
  return `I change what ${name} settled. ${named.join('; ')}${more}. I have read the ${effects.length} open deadlines, extensions and answers that read otherwise from now on (list ${digest}). What was signed stays as it was signed.`;
}

function short(words: string): string {
  return words.length > 40 ? `${words.slice(0, 39)}…` : words;
}

function sha256Of(content: unknown): string {
  return createHash('sha256').update(JSON.stringify(content)).digest('hex');
}
