import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { announce, type Said, takeCarried } from './announce.js';

let shownBefore = false;

interface PageProps {
  title: string;
  /** Beside the title, smaller. */
  aside?: ComponentChildren;
  back?: { href: string; text: string };
  children: ComponentChildren;
}

/** One page: its heading takes the focus when it opens, so that keyboard and screen reader begin there. */
export function Page({ title, aside, back, children }: PageProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [said] = useState<Said | null>(takeCarried);
  useEffect(() => {
    if (shownBefore) heading.current?.focus();
    shownBefore = true;
    window.scrollTo(0, 0);
    if (said) announce([said.title, ...said.lines].join(' '));
  }, [said]);
  useEffect(() => {
    document.title = `${title} - Proviso`;
  }, [title]);
  return (
    <main id="main" class="page">
      {back && (
        <a class="back" href={back.href}>
          {back.text}
        </a>
      )}
      <h1 ref={heading} tabIndex={-1}>
        {title} {aside && <span class="soft aside">{aside}</span>}
      </h1>
      {said && (
        <div class="done-box">
          <p class="strong">{said.title}</p>
          {said.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      )}
      {children}
    </main>
  );
}
