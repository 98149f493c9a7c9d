/** What is told about movements by HTTP. Each class checks shape only. */
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { IsInt, Max, Min, ValidateIf } from 'class-validator';
import { Digits, Instant, NestedList, OneOf, Text } from '../http/fields.js';

/** Most characters of one delivery; the address takes no larger body either. */
export const DELIVERY_BYTES = 256 * 1024;

export class MovementsBody {
  @Text(DELIVERY_BYTES, {
    description: 'One movement message or many, as they came: MVT, MVA, DIV, with COR for a correction.',
    example: 'MVT\nQB410/14.QABD.QXA\nAD0730/0740 EA0900 QXB',
  })
  text!: string;

  @Instant({ description: 'When it was received; absent means now.', optional: true })
  receivedAt?: string;
}

export class TrayQuery {
  @OneOf(['open', 'settled', 'mended'], { description: 'Which entries; absent means the open ones.', optional: true })
  state?: 'open' | 'settled' | 'mended';
}

export class MendBody {
  @Text(8000, {
    description: 'The corrected text, or the message that was missing; absent when it stays as it is.',
    optional: true,
  })
  text?: string;

  @Text(1000, { description: 'Why.' })
  reason!: string;
}

export class DelayBody {
  @Digits(2, { description: 'Reason of the delay, AHM 730.', example: '41' })
  code!: string;

  @ApiProperty({ description: 'Minutes.', type: 'integer' })
  @IsInt()
  @Min(0)
  @Max(5999)
  minutes!: number;
}

/** A leg as a person tells it. Instants are whole minutes. */
export class LegBody {
  @Text(12, { description: 'Flight number as in messages.', example: 'QB410' })
  flight!: string;

  @Text(10, { description: 'Scheduled UTC day of the flight.', example: '2026-05-14' })
  scheduledOn!: string;

  @Text(4, { description: 'Station it left from.', example: 'QXA' })
  from!: string;

  @Text(4, { description: 'Station it arrived at, or is bound for.', optional: true, example: 'QXB' })
  to?: string;

  @OneOf(['arrived', 'returned', 'ramp', 'under-way', 'withdrawn'], {
    description:
      'Arrived; returned to where it left from, flown; back on the ramp, not flown; under way; or withdrawn: it was no leg.',
  })
  ending!: 'arrived' | 'returned' | 'ramp' | 'under-way' | 'withdrawn';

  @Instant({ description: 'Off blocks.' })
  offBlockAt!: string;

  @Instant({ description: 'Airborne.', optional: true })
  airborneAt?: string;

  @Instant({ description: 'Touch-down.', optional: true })
  landedAt?: string;

  @Instant({ description: 'On blocks.', optional: true })
  onBlockAt?: string;

  @ApiPropertyOptional({ description: 'Landings, where touch-and-goes make more than one.', type: 'integer' })
  @ValidateIf((_, value: unknown) => value !== undefined)
  @IsInt()
  @Min(0)
  @Max(99)
  landings?: number;

  @NestedList(() => DelayBody, 4, { description: 'Reasons of a late departure.' })
  delays!: DelayBody[];

  @Text(1000, { description: 'Why a person enters or corrects it.' })
  reason!: string;
}

export class LegsQuery {
  @Instant({ description: 'Legs that left from then on; absent means the last 30 days.', optional: true })
  from?: string;

  @Instant({ description: 'Legs that left before then.', optional: true })
  until?: string;
}
