/** What is told about engines by HTTP. Each class checks shape only. */
import { ApiProperty } from '@nestjs/swagger';
import { IsInt, Max, Min } from 'class-validator';
import { Instant, Nested, OneOf, SignBody, Text } from '../../http/fields.js';

/** Six hundred thousand hours, in minutes: beyond what any engine reaches. */
const MOST_MINUTES = 36_000_000;
const MOST_CYCLES = 1_000_000;

export class EngineCountBody {
  @OneOf(['reading', 'run'], {
    description: 'What its counters read, or what it used that no leg tells: a ground run, a start broken off.',
  })
  kind!: 'reading' | 'run';

  @Text(40, { description: 'Where it stands: the unit, as the MEL names it.', example: '1' })
  position!: string;

  @Text(40, { description: 'Serial number of the engine; needed for a reading.', optional: true })
  serial?: string;

  @Instant({ description: 'When the counters read so, or when the run was.' })
  at!: string;

  @ApiProperty({ description: 'Whole minutes: on the counter, or of the run.', type: 'integer' })
  @IsInt()
  @Min(0)
  @Max(MOST_MINUTES)
  minutes!: number;

  @ApiProperty({ description: 'Cycles: on the counter, or of the run.', type: 'integer' })
  @IsInt()
  @Min(0)
  @Max(MOST_CYCLES)
  cycles!: number;

  @Text(1000, { description: 'Where it is known from; when it is corrected, why.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export class WithdrawCountBody {
  @Text(1000, { description: 'Why it was never so.' })
  reason!: string;

  @Nested(() => SignBody, { description: 'The signature.' })
  sign!: SignBody;
}

export const ENGINE_ACTS = ['reading', 'run', 'withdrawn'] as const;

export class EngineStatementQuery {
  @OneOf(ENGINE_ACTS, { description: 'What is to be signed.' })
  act!: (typeof ENGINE_ACTS)[number];
}
