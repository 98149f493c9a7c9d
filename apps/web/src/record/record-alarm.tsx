import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';

/** To those who look after the server: that the last backup or signed head is old, or that there is none. */
export function RecordAlarm() {
  const { value } = useRead<Schemas['RecordState']>('/record/state');
  if (value === null) return null;
  const { backup, signedHead } = value;
  const words = [
    backup.old && (backup.made === null ? 'No backup was ever made' : 'The last backup is old'),
    signedHead.old &&
      (signedHead.made === null ? 'no head of the record was ever signed' : 'the last signed head is old'),
  ].filter((one) => one !== false);
  if (words.length === 0) return null;
  const [first = '', ...rest] = words;
  const sentence = [first.charAt(0).toUpperCase() + first.slice(1), ...rest].join(', and ');
  return (
    <p class="caution">
      <strong>{sentence}.</strong> <a href="/record">See the record</a>
    </p>
  );
}
