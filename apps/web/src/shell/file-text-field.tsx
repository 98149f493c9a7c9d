import { useState } from 'preact/hooks';

interface FileTextFieldProps {
  id: string;
  label: string;
  /** Endings offered. */
  accept: string;
  /** Bytes. */
  most: number;
  onText(text: string): void;
}

/** A file whose text is read at once. It may be chosen again after it was mended; one that cannot be taken is told. */
export function FileTextField({ id, label, accept, most, onText }: FileTextFieldProps) {
  const [fault, setFault] = useState('');

  async function read(input: HTMLInputElement): Promise<void> {
    const file = input.files?.[0];
    if (!file) return;
    const { text, fault: found } = await textOf(file, most);
    // A browser says nothing when the file is chosen that is chosen already.
    input.value = '';
    setFault(found);
    if (found === '') onText(text);
  }

  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="file"
        accept={accept}
        aria-describedby={`${id}-fault`}
        onChange={(event) => void read(event.currentTarget)}
      />
      <div role="alert" id={`${id}-fault`}>
        {fault !== '' && <p class="field-error">{fault}</p>}
      </div>
    </div>
  );
}

async function textOf(file: File, most: number): Promise<{ text: string; fault: string }> {
  if (file.size > most) {
    const fault = `${file.name} has ${kilobytes(file.size)}; ${kilobytes(most)} are the most, so send it in parts.`;
    return { text: '', fault };
  }
  const bytes = await file.arrayBuffer().catch(() => null);
  if (bytes === null) {
    return { text: '', fault: `${file.name} could not be read. Look whether it is still there and choose it again.` };
  }
  const text = inUtf8(bytes);
  if (text !== null) return { text, fault: '' };
  return { text: '', fault: `${file.name} is no text in UTF-8. Save it as CSV in UTF-8 and choose it again.` };
}

/** Null where it is none: some browsers would guess, and others put signs in place of letters. */
function inUtf8(bytes: ArrayBuffer): string | null {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return text.includes('\0') ? null : text;
  } catch {
    return null;
  }
}

const kilobytes = (bytes: number): string => `${Math.ceil(bytes / 1000)} kB`;
