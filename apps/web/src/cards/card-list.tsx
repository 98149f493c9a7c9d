import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import { read, type Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useRead } from '../api/use-read.js';
import { ForFlight } from '../acts/for-flight.js';
import { ProblemBox } from '../shell/problem-box.js';
import { minutesWords } from '../words/words.js';

type Offered = Schemas['CardOffered'];

/** Work cards of an item: those under way first, then those that may be started. */
export function CardList({ defect }: { defect: Schemas['DefectLine'] }) {
  const cards = useRead<Schemas['CardsOfDefect']>(`/defects/${defect.id}/cards`);
  const { works = [], offered = [] } = cards.value ?? {};
  const library = offered.filter(({ procedure }) => procedure === null);
  if (works.length + library.length === 0) return null;
  return (
    <section>
      <h2>Work cards</h2>
      <ul class="plain-list cards">
        {works.map((work) => (
          <li key={work.id}>
            <a class="big" href={`/defects/${defect.id}/cards/${work.id}`}>
              <span class="strong">{work.title}</span>
              <span class="soft block">
                {work.state === 'open' ? 'not signed' : work.state}, {work.stepsDone} of {work.steps} steps done,
                started by {work.startedBy}
              </span>
            </a>
          </li>
        ))}
        {library.map((card) => (
          <li key={card.card}>
            <StartCard defect={defect} card={card} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Starts a card, and goes to it. */
export function StartCard({ defect, card }: { defect: Schemas['DefectLine']; card: Offered }) {
  const { route } = useLocation();
  const { send, sending, problem } = useAct();
  const aircraft = useRead<Schemas['AircraftView']>(card.eachDeparture ? `/aircraft/${defect.aircraft}` : null);
  const [chosen, setChosen] = useState<string | null>(null);
  const flight = chosen ?? (card.eachDeparture ? (aircraft.value?.flights[0]?.id ?? null) : null);

  async function start(event: Event): Promise<void> {
    event.preventDefault();
    const { procedure } = card;
    const body = {
      card: card.card,
      ...(procedure === null ? {} : { procedure }),
      ...(flight === null ? {} : { forFlight: flight }),
    };
    const seen = `"${defect.version}"`;
    const done = await send<Schemas['ActDone']>({ method: 'POST', path: `/defects/${defect.id}/cards`, body, seen });
    if (!done) return;
    const { body: now } = await read<Schemas['CardsOfDefect']>(`/defects/${defect.id}/cards`);
    route(`/defects/${defect.id}/cards/${now.works[0]?.id ?? ''}`);
  }

  return (
    <form onSubmit={start}>
      <p>
        <span class="strong">{card.title}</span>
        <span class="soft block">
          {card.reference}. {card.steps} steps, {minutesWords(card.minutes)}. The manual prevails.
        </span>
      </p>
      {card.eachDeparture && <ForFlight aircraft={aircraft} flight={flight} onFlight={setChosen} />}
      <ProblemBox problem={problem} />
      <div class="buttons">
        <button disabled={sending}>Start this card</button>
      </div>
    </form>
  );
}
