import { Controller, Get, Inject, Param } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { REFUSALS, type RefusalCode } from '#deferrals';
import type { Store } from '#store';
import { Problem, PROBLEMS, problemType } from '../http/problem.js';
import { refusalStatus } from '../http/refusal-status.js';
import { Open } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from './shape.js';

/** Every type of problem with its words, so that the address in `type` leads somewhere; and whether the server is well. */
@ApiTags('about')
@Controller('api')
export class ProblemsController {
  constructor(@Inject(STORE) private readonly store: Store) {}

  @Open()
  @Get('problems')
  @ApiOperation({ summary: 'All types of problem.' })
  @ApiOkResponse({ schema: ref('ProblemTypes') })
  all(): object {
    return { problems: allProblems() };
  }

  @Open()
  @Get('problems/:code')
  @ApiOperation({ summary: 'One type of problem.' })
  @ApiOkResponse({ schema: ref('ProblemType') })
  one(@Param('code') code: string): object {
    const found = allProblems().find(({ type }) => type === problemType(code));
    if (!found) throw new Problem('not-found', 'There is no such type of problem.');
    return found;
  }

  @Open()
  @Get('health')
  @ApiOperation({ summary: 'Whether the server and its database answer.' })
  @ApiOkResponse({ schema: ref('Health') })
  async health(): Promise<object> {
    return { server: true, database: await this.store.isUp() };
  }
}

function allProblems() {
  const ofInterface = Object.entries(PROBLEMS).map(([code, { title, status, next }]) => ({
    type: problemType(code),
    title,
    status,
    next,
    paragraph: null,
  }));
  const ofTrade = Object.entries(REFUSALS).map(([code, { sentence, next, paragraph }]) => ({
    type: problemType(code),
    title: sentence,
    status: refusalStatus(code as RefusalCode),
    next,
    paragraph,
  }));
  return [...ofInterface, ...ofTrade];
}
