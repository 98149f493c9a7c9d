/** Holds every answer against the OpenAPI document that the server itself publishes. */
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import formats from 'ajv-formats';

export interface SeenAnswer {
  method: string;
  /** With the values in it, without the query. */
  path: string;
  status: number;
  contentType: string;
  /** Parsed; undefined when there was none. */
  body: unknown;
}

interface Operation {
  responses: Record<string, { content?: Record<string, { schema?: object }> }>;
}

export interface OpenApi {
  paths: Record<string, Record<string, Operation>>;
}

export class Contract {
  /** Which answers were looked at, as `GET /api/fleet 200`. */
  readonly seen = new Set<string>();
  private readonly ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: true });
  private readonly checks = new Map<string, ValidateFunction>();

  /** @param problems every type of problem with its one status, as the server lists them */
  constructor(
    readonly document: OpenApi,
    readonly problems: readonly { type: string; status: number }[],
  ) {
    (formats as unknown as (ajv: Ajv2020) => void)(this.ajv);
    this.ajv.addSchema(document, 'api');
  }

  /** What does not fit, in sentences; empty when all does. */
  misfits({ method, path, status, contentType, body }: SeenAnswer): string[] {
    const template = this.templateOf(method, path);
    const operation = template && this.document.paths[template]?.[method.toLowerCase()];
    if (status >= 400) return this.problemMisfits(status, contentType, body);
    if (!template || !operation) return [`${method} ${path} answered ${status} and is in no document`];
    this.seen.add(`${method} ${template} ${status}`);
    const response = operation.responses[String(status)];
    if (!response) return [`${method} ${template} says nothing of ${status}`];
    const schema = response.content?.['application/json']?.schema;
    if (!schema) return body === undefined ? [] : [`${method} ${template} ${status} answered more than documented`];
    const pointer = ['paths', template, method.toLowerCase(), 'responses', String(status)];
    return this.against([...pointer, 'content', 'application/json', 'schema'], body);
  }

  /** Every operation with its documented success, in the form of `seen`. */
  documented(): string[] {
    return Object.entries(this.document.paths).flatMap(([path, operations]) =>
      Object.entries(operations).flatMap(([method, { responses }]) =>
        Object.keys(responses)
          .filter((status) => status !== 'default')
          .map((status) => `${method.toUpperCase()} ${path} ${status}`),
      ),
    );
  }

  private problemMisfits(status: number, contentType: string, body: unknown): string[] {
    if (!contentType.startsWith('application/problem+json')) return [`${status} answered as "${contentType}"`];
    const misfits = this.against(['components', 'schemas', 'Problem'], body);
    const told = body as { type?: unknown; status?: unknown } | undefined;
    const listed = this.problems.find(({ type }) => type === told?.type)?.status;
    if (told?.status === status && listed === status) return misfits;
    return [
      ...misfits,
      `${String(told?.type)} is listed as ${listed}, says ${String(told?.status)} and came as ${status}`,
    ];
  }

  private against(pointer: string[], body: unknown): string[] {
    const $ref = `api#/${pointer.map((key) => encodeURIComponent(key.replaceAll('~', '~0').replaceAll('/', '~1'))).join('/')}`;
    const check = this.checks.get($ref) ?? this.ajv.compile({ $ref });
    this.checks.set($ref, check);
    if (check(body)) return [];
    return (check.errors ?? []).map(
      ({ instancePath, message, params }) => `${instancePath || '/'} ${message ?? ''} ${JSON.stringify(params)}`,
    );
  }

  /** The path as documented; one without a placeholder stands before one with. */
  private templateOf(method: string, path: string): string | undefined {
    const fitting = Object.keys(this.document.paths).filter(
      (template) =>
        this.document.paths[template]?.[method.toLowerCase()] &&
        new RegExp(`^${template.replace(/\{[^}]+\}/g, '[^/]+')}$`).test(path),
    );
    return fitting.toSorted((one, other) => one.split('{').length - other.split('{').length)[0];
  }
}
