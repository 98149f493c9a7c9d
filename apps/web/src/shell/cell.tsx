import type { ComponentChildren } from 'preact';

/** A cell that names its column where the table is narrow and each row is a card. */
export function Cell({ head, children }: { head: string; children: ComponentChildren }) {
  return (
    <td data-head={head}>
      <div>{children}</div>
    </td>
  );
}
