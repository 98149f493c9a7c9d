import { createHash } from 'node:crypto';
import { newId, type Store } from '#store';
import type { FreshDatabase } from '../support/postgres.js';
import { withClient } from '../support/with-client.js';
import { someInstant, writeUp, type AnOperator } from './an-operator.js';
import { aLeg, aMessage } from './a-movement.js';

const ofEmptyObject = createHash('sha256').update('{}').digest('hex');

/** At least one row of this operator in every table that holds rows of operators. */
export async function fillEveryTable(database: FreshDatabase, store: Store, of: AnOperator): Promise<void> {
  await store.withOperator(of.id, of.person, async (tx) => {
    const aircraft = await tx.aircraft.lock(of.aircraft);
    if (!aircraft) throw new Error('no aircraft');
    await tx.operators.addStation({ code: 'QQA', name: 'Somewhere', zone: 'UTC' });
    await tx.stationCovers.add({ station: 'QQA', personId: of.person, source: 'roster', enteredAt: someInstant });
    const flightId = await tx.flights.add({
      aircraftId: of.aircraft,
      number: '100',
      fromStation: 'QQA',
      toStation: 'QQA',
      offBlockAt: someInstant,
    });
    await tx.facts.add({
      aircraftId: of.aircraft,
      key: 'flight.icing',
      value: true,
      observedAt: someInstant,
      enteredAt: someInstant,
    });
    const defect = await writeUp(tx, of, aircraft);
    await tx.people.authorise({
      personId: of.person,
      organisationId: of.organisation,
      number: 'A1',
      aircraftTypes: ['T1'],
      licenceCategories: ['B1'],
      privileges: ['defer'],
      validFrom: someInstant,
    });
    await tx.invitations.add({
      codeHash: `code of ${of.id}`,
      roles: ['technician'],
      invitedBy: of.person,
      invitedAt: someInstant,
      untilAt: someInstant,
    });
    await tx.mel.add({
      aircraftType: 'T1',
      document: 'MEL',
      revision: '1',
      effectiveOn: '2026-01-01',
      content: '{}',
      sha256: ofEmptyObject,
      loadedAt: someInstant,
    });
    await tx.mel.addDirective({ aircraftType: 'T1', number: 'AD 1', entry: '29-11-01' });
    await tx.cards.putInForce({
      aircraftType: 'T1',
      document: 'CARDS',
      revision: '1',
      effectiveOn: '2026-01-01',
      content: '{}',
      sha256: ofEmptyObject,
      loadedAt: someInstant,
    });
    await tx.cards.recordRevision({
      manual: 'AMM',
      task: '',
      revision: '13',
      issuedOn: '2026-01-01',
      recordedAt: someInstant,
    });
    await tx.register.add({
      aircraftId: of.aircraft,
      defectId: defect.id,
      kind: 'breaker',
      place: 'P5',
      undo: 'reset',
      fittedBy: of.person,
      fittedAt: someInstant,
    });
    const { entryId } = defect;
    await tx.register.addAct({
      aircraftId: of.aircraft,
      seq: 1,
      id: newId(),
      kind: 'found',
      at: someInstant,
      payload: {},
      entryId,
    });
    const confirmed = { aircraftType: 'T1', card: 'c', wrote: '12', against: '13', signature: {}, entryId };
    await tx.cards.confirm(confirmed);
    await tx.signatures.add({
      personId: of.person,
      statement: 'I certify',
      contentSha256: 'b'.repeat(64),
      authorisation: {},
      method: 'password',
      evidence: 'session',
      signedAt: someInstant,
      entryId,
    });
    await tx.concurrences.add({
      defectId: defect.id,
      defectVersion: 1,
      basis: 'MEL 29-11-01 row 1',
      personId: of.person,
      signature: {},
      givenAt: someInstant,
      entryId,
    });
    await tx.judgements.add({
      aircraftId: of.aircraft,
      judgement: 'combination',
      accepted: true,
      personId: of.person,
      role: 'maintenance-control',
      at: someInstant,
      entryId,
    });
    await tx.verdicts.add({
      aircraftId: of.aircraft,
      flightId,
      verdict: 'may-fly',
      situationSha256: 'c'.repeat(64),
      answer: {},
      at: someInstant,
      entryId,
    });
    await tx.extensions.add({
      defectId: defect.id,
      state: 'asked',
      askedBy: of.person,
      askedRole: 'engineer',
      askedAt: someInstant,
      reason: 'the part is held in customs',
      whyNotFixed: 'no part at any station',
      plan: 'fitted on the day it comes',
    });
    await tx.calendarFeeds.add({
      personId: of.person,
      tokenHash: 'e'.repeat(64),
      label: 'telephone',
      createdAt: someInstant,
    });
    await tx.zoneData.add({
      id: newId(),
      defectId: defect.id,
      zone: 'America/Vancouver',
      tzdbBefore: '2025c',
      tzdbAfter: '2026f',
      endsBefore: '2026-11-02T08:00:00.000Z',
      endsAfter: '2026-11-02T07:00:00.000Z',
      foundAt: someInstant,
    });
    const addressId = await tx.reminderAddresses.add({
      personId: of.person,
      kind: 'email',
      address: `person@${of.id}.invalid`,
      label: 'at work',
      createdAt: someInstant,
    });
    await tx.reminders.notice([
      {
        id: newId(),
        defectId: defect.id,
        term: 1,
        share: 50,
        addressId,
        content: {},
        noticedAt: someInstant,
        state: 'waiting',
        nextAt: someInstant,
        problem: null,
      },
    ]);
    await tx.movements.addFile({ sha256: 'f'.repeat(64), name: 'a file', bytes: 1, takenAt: someInstant });
    const messageId = await aMessage(tx, entryId);
    await tx.movements.openTray([
      { messageId, reason: 'no-arrival', sentence: 'It is not known.', openedAt: someInstant },
    ]);
    await tx.legs.add([aLeg({ aircraftId: of.aircraft, entryId, messageId, flightId })]);
    await tx.engineCounts.add({
      id: newId(),
      version: 1,
      aircraftId: of.aircraft,
      kind: 'reading',
      position: '1',
      serial: 'E-1',
      at: someInstant,
      minutes: 60,
      cycles: 1,
      reason: 'the log of the engine',
      personId: of.person,
      writtenAt: someInstant,
      entryId,
    });
    const held = { kind: 'aircraft', subjectId: of.aircraft, reason: 'a claim', placedBy: of.person } as const;
    await tx.keeping.hold({ ...held, placedAt: someInstant });
    await tx.keeping.note('aircraft', [of.aircraft], someInstant);
    await tx.idempotency.keep('k', 'f', { status: 201, headers: {}, body: '{}' });
  });
  await withClient(database.adminUrl, async (client) => {
    await client.query(
      'insert into record_sealed (operator_id, number, entry_id, leaf) select operator_id, 1, id, leaf from record_entry where operator_id = $1 order by seq limit 1',
      [of.id],
    );
    await client.query('insert into tree_head (operator_id, size, root) values ($1, 1, $2)', [of.id, 'd'.repeat(64)]);
    await client.query(
      `insert into signed_head values ($1, 1, repeat('d', 64), now(), repeat('e', 128), repeat('f', 88))`,
      [of.id],
    );
    await client.query(`insert into erasure values ($1, $2, repeat('a', 64), now(), null)`, [of.id, of.person]);
    await client.query('insert into tree_frontier values ($1, 1, $2)', [of.id, ['d'.repeat(64)]]);
  });
}
