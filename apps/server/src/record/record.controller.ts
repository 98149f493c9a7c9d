import { Controller, Get, Inject, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store } from '#store';
import { Id } from '../http/fields.js';
import { Problem } from '../http/problem.js';
import { CurrentSession, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { baseTime } from './base-time.js';

export class RecordQuery {
  @Id({ description: 'The aircraft.' })
  aircraft!: string;
}

@ApiTags('record')
@Controller('api/record')
export class RecordController {
  constructor(@Inject(STORE) private readonly store: Store) {}

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

  @Get('head')
  @ApiOperation({ summary: 'The newest head of the tree over the record.' })
  @ApiOkResponse({ schema: ref('RecordHead') })
  async head(@CurrentSession() session: Session): Promise<object> {
    const head = await this.store.withOperator(session.operatorId, session.personId, (tx) => tx.record.head());
    return { size: head?.size ?? 0, root: head?.root ?? null };
  }
}
