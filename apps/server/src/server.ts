import 'reflect-metadata';
import { existsSync } from 'node:fs';
import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import staticFiles from '@fastify/static';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import { type OpenAPIObject, SwaggerModule } from '@nestjs/swagger';
import { AppModule } from './app.module.js';
import { checkAddress, checkBody } from './http/body-hygiene.js';
import { fromWhere } from './http/from-where.js';
import { Problem, type ProblemBody } from './http/problem.js';
import { sendProblem } from './http/problem.filter.js';
import { DELIVERY_BYTES } from './movements/bodies.js';
import { MOVEMENTS_ADDRESS, takePlainText } from './movements/plain-text.js';
import {
  FileIntakeService,
  type FileTaken,
  LARGEST_FILE_BYTES,
  type MovementFile,
} from './movements/files/file-intake.service.js';
import { type KeptRound, KeepingService } from './record/keeping/keeping.service.js';
import { openApiDocument } from './openapi/document.js';
import type { Outside } from './outside.module.js';
import { ConfirmationsService } from './watch/reminders/confirmations.service.js';
import { DeliveryService } from './watch/reminders/delivery.service.js';
import { type LookedAt, NoticingService } from './watch/reminders/noticing.service.js';
import { LookingService, type Looked } from './zone-data/looking.service.js';
import { startWatching } from './watch/reminders/watching.js';

export interface ServerOptions extends Outside {
  host: string;
  /** 0 takes a free one. */
  port: number;
  /** Folder of the built pages; left out where there are none. */
  pages?: string;
  /** Requests a minute from one address; sign-in takes a twentieth of it. */
  requestsPerMinute?: number;
  /** How long a request may take to arrive whole; a minute, if not said otherwise. */
  arrivesWithinMs?: number;
}

export interface RunningServer {
  url: string;
  openApi: OpenAPIObject;
  /** What newer time-zone data did to open deadlines, operator by operator. */
  zoneData: readonly Looked[];
  /** Looks at every open deferral of an operator and notices what is due; needs `watch`. */
  look(operatorId: string): Promise<LookedAt>;
  /** Looks at what of an operator is past its period of keeping. */
  keep(operatorId: string): Promise<KeptRound>;
  /** Takes a file of movement messages in. */
  movementFiles: { largestBytes: number; take(file: MovementFile): Promise<FileTaken> };
  close(): Promise<void>;
}

const MINUTE_MS = 60_000;
const SIGNING_IN = [
  '/api/session',
  '/api/session/passkey',
  '/api/session/passkey-challenge',
  '/api/sign-on',
  '/api/defects/:id/card-seconds',
];
const BODY_BYTES = 64 * 1024;
const MEL_BODY_BYTES = 6 * 1024 * 1024;

/** Starts the HTTP server: interface, its documentation and the pages on one port. */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const { arrivesWithinMs = MINUTE_MS } = options;
  const adapter = new FastifyAdapter({
    bodyLimit: BODY_BYTES,
    onProtoPoisoning: 'error',
    onConstructorPoisoning: 'error',
    trustProxy: false,
    forceCloseConnections: true,
    // Somebody who sends one byte now and then would hold a connection for ever.
    requestTimeout: arrivesWithinMs,
    http: { headersTimeout: arrivesWithinMs, connectionsCheckingInterval: arrivesWithinMs / 4 },
  });
  const fastify = adapter.getInstance();
  const requestsPerMinute = options.requestsPerMinute ?? 1200;
  const signInsPerMinute = Math.max(10, Math.floor(requestsPerMinute / 20));
  fastify.addHook('onRoute', (route) => {
    if (route.url === '/api/mel' || route.url === '/api/cards') route.bodyLimit = MEL_BODY_BYTES;
    if (route.url === MOVEMENTS_ADDRESS) route.bodyLimit = DELIVERY_BYTES;
    const signsIn = SIGNING_IN.includes(route.url) && [route.method].flat().includes('POST');
    if (signsIn) route.config = { ...route.config, rateLimit: { max: signInsPerMinute, timeWindow: MINUTE_MS } };
  });
  // JSON is taken, and text in one place: no form, and no text elsewhere, which another site's page can send without asking.
  takePlainText(fastify);
  // What is read here is about people and aircraft: no browser and no proxy keeps it, unless an address says otherwise.
  fastify.addHook('onSend', (request, reply, payload, done) => {
    const kept = reply.hasHeader('cache-control') || !request.url.startsWith('/api');
    if (!kept) void reply.header('cache-control', 'no-store');
    done(null, payload);
  });
  // Before anything walks through the body: what is nested too deep must not be walked through at all.
  fastify.addHook('preValidation', (request, _reply, done) => {
    checkAddress(request.params, request.query);
    checkBody(request.body);
    done();
  });
  const app = await NestFactory.create<NestFastifyApplication>(AppModule.with(options), adapter, {
    logger: false,
    bodyParser: false,
  });
  await app.register(cookie);
  await app.register(helmet, { contentSecurityPolicy: { directives: CONTENT_POLICY } });
  await app.register(rateLimit, {
    max: requestsPerMinute,
    timeWindow: MINUTE_MS,
    keyGenerator: ({ ip }) => fromWhere(ip),
    errorResponseBuilder: () => new Problem('too-many-requests', 'Too many requests from this address.'),
  });
  if (options.pages && existsSync(options.pages)) await servePages(app, options.pages);
  const openApi = openApiDocument(app);
  SwaggerModule.setup('api/docs', app, openApi, { jsonDocumentUrl: 'api/docs/openapi.json' });
  // Before anybody is answered: a deadline is never read by newer data that nobody looked at.
  const zoneData = await app.get(LookingService).lookAtAll();
  await app.listen(options.port, options.host);
  if (options.watch) {
    const services = {
      noticing: app.get(NoticingService),
      delivery: app.get(DeliveryService),
      confirmations: app.get(ConfirmationsService),
      keeping: app.get(KeepingService),
    };
    startWatching(options.store, options.watch, services);
  }
  return {
    url: await app.getUrl(),
    openApi,
    zoneData,
    look: (operatorId) => app.get(NoticingService).look(operatorId),
    keep: (operatorId) => app.get(KeepingService).look(operatorId),
    movementFiles: { largestBytes: LARGEST_FILE_BYTES, take: (file) => app.get(FileIntakeService).take(file) },
    async close() {
      await options.watch?.jobs.stop();
      await app.close();
    },
  };
}

/** Nothing from elsewhere. The documentation page brings inline styles. */
const CONTENT_POLICY = {
  defaultSrc: ["'self'"],
  scriptSrc: ["'self'"],
  styleSrc: ["'self'", "'unsafe-inline'"],
  imgSrc: ["'self'", 'data:'],
  fontSrc: ["'self'"],
  frameAncestors: ["'none'"],
  formAction: ["'self'"],
  upgradeInsecureRequests: null,
};

/** Every address that is neither a file nor of the interface is the page, which looks at the address itself. */
async function servePages(app: NestFastifyApplication, folder: string): Promise<void> {
  await app.register(staticFiles, { root: folder, wildcard: false, index: false, maxAge: '1h', immutable: false });
  const fastify = app.getHttpAdapter().getInstance();
  fastify.get('/*', (request, reply) => {
    if (request.url.startsWith('/api')) {
      const body: ProblemBody = new Problem('not-found', `GET ${request.url.split('?')[0]} leads nowhere.`).body();
      return sendProblem(reply, body);
    }
    return reply.header('cache-control', 'no-cache').sendFile('index.html', { maxAge: 0 });
  });
}

/** The OpenAPI document without a server or a database: for the types of the pages and for tests. */
export async function describeInterface(outside: Outside): Promise<OpenAPIObject> {
  const app = await NestFactory.create<NestFastifyApplication>(AppModule.with(outside), new FastifyAdapter(), {
    logger: false,
  });
  const document = openApiDocument(app);
  await app.close();
  return document;
}
