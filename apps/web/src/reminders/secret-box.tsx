/** A secret that is told once. */
export function SecretBox({ secret }: { secret: string }) {
  return (
    <div class="caution" role="status">
      <p class="strong">The secret that signs messages to this address. It is shown now and never again:</p>
      <p>
        <code class="breakable">{secret}</code>
      </p>
      <p>
        Give it to the program that reads them (Standard Webhooks). It refuses messages more than five minutes old.
      </p>
    </div>
  );
}
