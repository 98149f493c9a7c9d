import type { FastifyReply } from 'fastify';

/** Hands out a file to be saved, never opened in place. Its name keeps letters and digits of what it is about, and nothing else. */
export function attached(reply: FastifyReply, about: string, ending: 'json' | 'pdf' | 'csv'): void {
  void reply
    .header('content-disposition', `attachment; filename="${fileName(about)}.${ending}"`)
    .header('cache-control', 'private, no-store');
}

export function fileName(about: string): string {
  return about.replace(/[^A-Za-z0-9]+/g, '-').replace(/^-+|-+$/g, '') || 'proviso';
}
