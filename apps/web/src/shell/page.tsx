import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { announce, type Said, takeCarried } from './announce.js';

let shownBefore = false;

interface PageProps {
  title: string;
  /** Beside the title, smaller. */
  aside?: ComponentChildren;
  back?: { href: string; text: string } | undefined;
  /** Something to press, at the end of the line of the title. */
  press?: ComponentChildren;
  children: ComponentChildren;
}

/** One page: its heading takes the focus when it opens, so that keyboard and screen reader begin there. */
export function Page({ title, aside, back, press, children }: PageProps) {
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
      <div class="title-line">
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        {aside && <p class="soft aside">{aside}</p>}
        {press}
      </div>
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
