import type { Schemas } from '../api/client.js';

interface WhatNextProps {
  verdict: Schemas['Verdict'];
  defect: Schemas['DefectLine'];
  /** Which flight, in words. */
  about: string;
  /** How many rows the entry offers. */
  rows: number;
}

/** A clear no under a row: what to do instead, the nearest first. */
export function WhatNext({ verdict, defect, about, rows }: WhatNextProps) {
  if (verdict.verdict !== 'may-not-fly') return null;
  const at = `/defects/${defect.id}`;
  return (
    <>
      <h3>What next</h3>
      <ul>
        <li>
          <a href={`${at}/rectification`}>Rectify it</a>, then test and release.
        </li>
        {rows > 1 && <li>Look at the other rows on this page.</li>}
        <li>
          <a href={`${at}/entries`}>Find another entry</a>, if another item failed, or{' '}
          <a href={`${at}/document`}>defer on another document</a>.
        </li>
        <li>Call maintenance control: {about} needs another aircraft, or another route.</li>
      </ul>
    </>
  );
}
