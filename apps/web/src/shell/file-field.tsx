interface FileFieldProps {
  id: string;
  /** Endings offered; YAML and JSON when absent. */
  accept?: string;
  label?: string;
  required?: boolean;
  onFile(file: File | null): void;
}

/** One file of text that is read here and sent as text. */
export function FileField({
  id,
  accept = '.yaml,.yml,.json',
  label = 'The file',
  required = true,
  onFile,
}: FileFieldProps) {
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="file"
        accept={accept}
        required={required}
        onChange={(event) => onFile(event.currentTarget.files?.[0] ?? null)}
      />
    </div>
  );
}
