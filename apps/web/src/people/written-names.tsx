import { useEffect, useRef } from 'preact/hooks';
import type { Schemas } from '../api/client.js';

/** Where the name of somebody stands in what people wrote. */
export function WrittenNames({ found: { places, more, words, says } }: { found: Schemas['WrittenNames'] }) {
  return (
    <section>
      <h3>The name in what people wrote</h3>
      {places.length > 0 && (
        <ul>
          {places.map(({ name, page, texts }) => (
            <li key={`${page} ${name}`}>
              <a href={page}>{name}</a>: {texts === 1 ? '1 text' : `${texts} texts`}
            </li>
          ))}
        </ul>
      )}
      {words.length > 0 && <p class="soft">Looked for: {words.join(', ')}</p>}
      {more && <p class="strong">The search stopped here: there may be more.</p>}
      <p>{says}</p>
    </section>
  );
}

/** What was erased just now, and what nobody could erase. */
export function ErasedBox({ answer: { person, list, written } }: { answer: Schemas['PersonErased'] }) {
  const title = useRef<HTMLHeadingElement>(null);
  // It stands at the top of a long page, and whoever signed is far below.
  useEffect(() => title.current?.focus(), [person.id]);
  return (
    <div class="card" role="status">
      <h2 ref={title} tabIndex={-1}>
        Erased: {person.name}
      </h2>
      <p class={list.written ? '' : 'strong'}>{list.says}</p>
      {/* The name that was looked for is gone from this page as well. */}
      <WrittenNames found={{ ...written, words: [] }} />
    </div>
  );
}
