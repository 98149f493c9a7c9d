import { Inject, Injectable } from '@nestjs/common';
import { type CardWork, doneBy, proceduresBrought, proceduresOwed, rowsBroughtBy, type DefectLife } from '#deferrals';
import { doStep, inspectStep, signCard, startCard, stopCard } from '#deferrals';
import type { Card } from '#mel';
import { newId, type AircraftRow, type DefectRow, type Tx } from '#store';
import { type Calling, numbersUsed, type Scene, signed } from '../defects/acting.js';
import { ActingService } from '../defects/acting.service.js';
import { livesOf } from '../defects/defect-book.js';
import { DefectViews } from '../defects/defect-views.service.js';
import { flightOr404 } from '../dispatch/dispatch.service.js';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import type { Proof } from '../people/proof.js';
import { authorisedActor } from '../people/signer.js';
import type * as Bodies from './bodies.js';
import { CardShelf } from './card-shelf.js';
import { cardWorkView, offeredView } from './card-view.js';
import { lastUsed } from './equipment-used.js';
import { askedOf } from './step-asked.js';
import { againstManual } from './revisions.js';
import { colleagues, needsTwo, SecondPersons } from './second-persons.service.js';

/** Work on cards under a defect. Each act is a rule of libs/deferrals; here they are only carried out. */
@Injectable()
export class CardsService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly acting: ActingService,
    private readonly views: DefectViews,
    private readonly shelf: CardShelf,
    private readonly seconds: SecondPersons,
  ) {}

  /** The cards that were started for a defect, and those that may be. */
  async ofDefect(tx: Tx, id: string) {
    const { row, aircraft, life } = await found(tx, id);
    const works = life.cards.map(workLine).toReversed();
    return { at: this.now(), works, offered: await this.offered(tx, row, aircraft, life) };
  }

  async view(tx: Tx, id: string, workId: string) {
    const { row, aircraft, life } = await found(tx, id);
    const work = life.cards.find(({ started }) => started.id === workId);
    if (!work) throw new Problem('not-found', `No work card was started here as ${workId}.`);
    const against = await againstManual(tx, aircraft.type, work.started.card);
    const { defect } = (await this.views.view(tx, id)).body;
    const at = this.now();
    const people = needsTwo(work) ? await colleagues(tx, at) : [];
    const { base } = await tx.operators.current();
    const used = await lastUsed(tx, work, at, base);
    return { version: row.version, body: { at, defect, work: cardWorkView(life, work, against, used), people } };
  }

  start(calling: Calling, id: string, body: Bodies.StartCardBody): Promise<object> {
    return this.acting.act(calling, id, null, async (scene) => {
      const { tx, aircraft, row, life, context } = scene;
      const cards = await this.cardsFor(tx, row, aircraft, body.procedure);
      const card = cards.find((one) => one.id === body.card);
      if (!card) throw new Problem('not-found', `There is no work card ${body.card} for ${aircraft.type} here.`);
      if (body.forFlight !== undefined) await flightOr404(tx, aircraft, body.forFlight);
      const { procedure, forFlight } = body;
      const of = {
        ...(procedure === undefined ? {} : { procedure }),
        ...(forFlight === undefined ? {} : { forFlight }),
      };
      return startCard(life, { id: newId(), ...(await actor(scene)), card, ...of }, context);
    });
  }

  async step(calling: Calling, id: string, body: Bodies.StepBody): Promise<object> {
    const done = async (scene: Scene, proof: Proof | null) => {
      const { work, step, used = [] } = body;
      const second = await this.seconds.of(scene, body, proof);
      const command = { id: newId(), ...(await actor(scene)), work, step, result: askedOf(body), used, ...second };
      return doStep(scene.life, command, scene.context);
    };
    const unsigned = () => this.acting.attempt(calling, id, (scene) => done(scene, null));
    const proof = await this.seconds.prove({ ...calling, id }, body, unsigned);
    return this.acting.act(calling, id, null, (scene) => done(scene, proof));
  }

  inspect(calling: Calling, id: string, body: Bodies.InspectionBody): Promise<object> {
    return this.acting.act(calling, id, body.sign, async (scene) => {
      const { work, step, findings, sign } = body;
      const by = await signed(scene, 'card-inspection', 'inspect', sign, titled(scene.life, work));
      return inspectStep(scene.life, { id: newId(), by, work, step, findings }, scene.context);
    });
  }

  sign(calling: Calling, id: string, { work, sign }: Bodies.CardSignatureBody): Promise<object> {
    return this.acting.act(calling, id, sign, async (scene) => {
      const { tx, aircraft, life, context } = scene;
      const by = await signed(scene, 'card', 'sign-procedure', sign, titled(life, work));
      const card = life.cards.find(({ started }) => started.id === work)?.started.card;
      const none = { newerRevision: null, confirmation: null };
      const against = card ? await againstManual(tx, aircraft.type, card) : none;
      return signCard(life, { id: newId(), thenId: newId(), by, work, ...against }, context);
    });
  }

  stop(calling: Calling, id: string, { work, reason, sign }: Bodies.CardStopBody): Promise<object> {
    return this.acting.act(calling, id, sign, async (scene) => {
      const by = await signed(scene, 'card-stop', 'sign-procedure', sign, titled(scene.life, work));
      return stopCard(scene.life, { id: newId(), thenId: newId(), by, work, reason }, scene.context);
    });
  }

  private async cardsFor(tx: Tx, row: DefectRow, aircraft: AircraftRow, procedure: string | undefined) {
    if (procedure !== undefined) return this.shelf.ofMel(tx, row, aircraft.type);
    return (await this.shelf.library(tx, aircraft.type))?.cards ?? [];
  }

  private async offered(tx: Tx, row: DefectRow, aircraft: AircraftRow, life: DefectLife) {
    if (life.closed !== null) return [];
    const ofMel = await this.shelf.ofMel(tx, row, aircraft.type);
    const basis = life.deferral?.basis;
    const owed = basis ? [...proceduresOwed(basis), ...rowsBroughtBy(basis).flatMap(proceduresBrought)] : [];
    const forProcedures = owed.flatMap(({ work, procedure }) => {
      const card = ofMel.find(({ id }) => id === procedure.card);
      return card ? [offeredView(card, work, procedure.repeat === 'each-departure')] : [];
    });
    const entry = life.item?.entry ?? null;
    const library = (await this.shelf.library(tx, aircraft.type))?.cards ?? [];
    const fits = ({ entries }: Card) => entries === undefined || (entry !== null && entries.includes(entry));
    return [...forProcedures, ...library.filter(fits).map((card) => offeredView(card, null, false))];
  }
}

async function found(tx: Tx, id: string): Promise<{ row: DefectRow; aircraft: AircraftRow; life: DefectLife }> {
  const row = await tx.defects.get(id);
  const aircraft = row ? await tx.aircraft.get(row.aircraftId) : null;
  const [opened] = row ? await livesOf(tx, [row]) : [];
  if (!row || !aircraft || !opened) throw new Problem('not-found', `There is no defect ${id} here.`);
  return { row, aircraft, life: opened.life };
}

async function actor({ tx, session, aircraft, context, life }: Scene) {
  const operator = await tx.operators.current();
  return authorisedActor(tx, {
    operatorCode: operator.code,
    personId: session.personId,
    role: session.roles[0] ?? 'technician',
    aircraftType: aircraft.type,
    privilege: 'sign-procedure',
    job: { defect: life.defect, usedNumbers: numbersUsed(life) },
    now: context.now,
  });
}

/** The title that the statement names. Where there is no such work, the rule says so after the signature was looked at. */
function titled({ cards }: DefectLife, id: string): { work: string } {
  return { work: cards.find(({ started }) => started.id === id)?.started.card.title ?? id };
}

function workLine(work: CardWork) {
  const { started, ended } = work;
  const { card, procedure, id, by, enteredAt } = started;
  return {
    id,
    card: card.id,
    title: card.title,
    procedure,
    state: ended === null ? 'open' : ended.kind === 'card-signed' ? 'signed' : 'stopped',
    startedBy: by.name,
    startedAt: enteredAt,
    stepsDone: card.steps.filter((step) => doneBy(work, step) !== undefined).length,
    steps: card.steps.length,
  };
}
