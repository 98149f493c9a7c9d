interface FileFieldProps {
  id: string;
  onFile(file: File | null): void;
}

/** One file of text that is read here and sent as text. */
export function FileField({ id, onFile }: FileFieldProps) {
  return (
    <div class="field">
      <label for={id}>The file</label>
      <input
        id={id}
        type="file"
        accept=".yaml,.yml,.json"
        required
        onChange={(event) => onFile(event.currentTarget.files?.[0] ?? null)}
      />
    </div>
  );
}
