/** One part of what a shift hands over, line by line. */
export function ShiftLines({ title, lines }: { title: string; lines: readonly string[] }) {
  return (
    <>
      <p class="strong">{title}</p>
      {lines.length === 0 ? (
        <p>Nothing.</p>
      ) : (
        <ul>
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </>
  );
}
