import { Controller, Get, Inject, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { fingerprint, publicKeyOfHex, type Store } from '#store';
import { Count, Id } from '../http/fields.js';
import { Problem } from '../http/problem.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { baseTime } from './base-time.js';
import { ExportsService } from './exports.service.js';
import { MAY_EXPORT } from './may-export.js';
import { RecordStateService } from './record-state.service.js';
import { RetentionService } from './retention.service.js';

export class RecordQuery {
  @Id({ description: 'The aircraft.' })
  aircraft!: string;
}

export class ProofQuery {
  @Count({ optional: true, description: 'Number of the entry.' })
  entry?: string;

  @Count({ optional: true, description: 'Size of a head that was signed earlier.' })
  since?: string;
}

function pemOf(hex: string): string {
  return publicKeyOfHex(hex).export({ type: 'spki', format: 'pem' }).toString();
}

@ApiTags('record')
@Controller('api/record')
export class RecordController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly exports: ExportsService,
    private readonly retention: RetentionService,
    private readonly states: RecordStateService,
  ) {}

  @Get()
  @ApiOperation({ summary: 'The record of one aircraft, in the order it was written.' })
  @ApiOkResponse({ schema: ref('RecordEntries') })
  entries(@CurrentSession() session: Session, @Query() query: RecordQuery): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, async (tx) => {
      if (!(await tx.aircraft.get(query.aircraft))) {
        throw new Problem('not-found', `There is no aircraft ${query.aircraft} here.`);
      }
      const entries = await tx.record.ofAircraft(query.aircraft);
      const { base } = await tx.operators.current();
      const names = await tx.people.namesOf(entries.flatMap(({ entry }) => (entry.who ? [entry.who] : [])));
      return {
        entries: entries.map(({ entry, leaf, number, sealedAt }) => ({
          id: entry.id,
          what: entry.what,
          by: entry.who ? (names.get(entry.who) ?? '(name erased)') : 'the program',
          enteredAt: entry.times.enteredAt,
          enteredAtBase: baseTime(entry.times.enteredAt, base),
          leaf,
          number,
          sealedAt,
          payload: entry.payload,
        })),
      };
    });
  }

  @Get('heads')
  @ApiOperation({ summary: 'The heads that were signed and exported, the newest first, at most 200.' })
  @ApiOkResponse({ schema: ref('RecordHeads') })
  async heads(@CurrentSession() session: Session): Promise<object> {
    const heads = await this.store.withOperator(session.operatorId, session.personId, (tx) =>
      tx.proofs.signedHeads(),
    );
    const keys = [...new Set(heads.map(({ publicKey }) => publicKey))];
    return {
      heads: heads.map(({ operatorId, size, root, signedAt, signature, publicKey }) => ({
        log: operatorId,
        size,
        root,
        signedAt,
        signature,
        key: fingerprint(publicKey),
      })),
      keys: keys.map((hex) => ({ fingerprint: fingerprint(hex), pem: pemOf(hex) })),
    };
  }

  @Get('proof')
  @Roles(...MAY_EXPORT)
  @ApiOperation({ summary: 'Proof that an entry stands in the record, and of how the record grew.' })
  @ApiOkResponse({ schema: ref('RecordProof') })
  proof(@CurrentSession() session: Session, @Query() { entry, since }: ProofQuery): Promise<object> {
    return this.exports.proof(session, {
      ...(entry === undefined ? {} : { entry: Number(entry) }),
      ...(since === undefined ? {} : { since: Number(since) }),
    });
  }

  @Get('retention')
  @Roles('quality', 'administrator')
  @ApiOperation({ summary: 'What is past its period of keeping, at most 500 defects. It deletes nothing.' })
  @ApiOkResponse({ schema: ref('Retention') })
  pastKeeping(@CurrentSession() { operatorId, personId }: Session): Promise<object> {
    return this.store.withOperator(operatorId, personId, (tx) => this.retention.list(tx));
  }

  @Get('state')
  @ApiOperation({ summary: 'How long the record is, and how old the last backup and the last signed head are.' })
  @ApiOkResponse({ schema: ref('RecordState') })
  state(@CurrentSession() { operatorId, personId }: Session): Promise<object> {
    return this.store.withOperator(operatorId, personId, (tx) => this.states.state(tx));
  }

  @Get('verification')
  @Roles('quality', 'administrator')
  @ApiOperation({ summary: 'Read the whole record through and compare all of it, as `proviso record verify` does.' })
  @ApiOkResponse({ schema: ref('RecordVerified') })
  verification(@CurrentSession() session: Session): Promise<object> {
    return this.states.verify(session);
  }

  @Get('head')
  @ApiOperation({ summary: 'The newest head of the tree over the record.' })
  @ApiOkResponse({ schema: ref('RecordHead') })
  async head(@CurrentSession() session: Session): Promise<object> {
    const head = await this.store.withOperator(session.operatorId, session.personId, (tx) => tx.record.head());
    return { size: head?.size ?? 0, root: head?.root ?? null };
  }
}
