/** What makes up a fleet, as people enter it: aircraft, stations, organisations, planned flights. */
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { ArrayMaxSize, ArrayUnique, IsArray, IsInt, IsString, Matches, Max, Min, ValidateIf } from 'class-validator';
import { Instant, Text } from '../../http/fields.js';

const IfGiven = () => ValidateIf((_, value: unknown) => value !== undefined);

/** What the MEL asks of one aircraft, and where it is based. */
export class FitBody {
  @ApiPropertyOptional({
    description: 'Serial number; absent: not known, and entries by serial are then not settled.',
  })
  @IfGiven()
  @IsInt()
  @Min(1)
  @Max(9_999_999)
  serial?: number;

  @ApiPropertyOptional({
    description: 'Configuration codes fitted, as the MEL names them; absent: not known. Empty: none of them.',
    type: [String],
  })
  @IfGiven()
  @IsArray()
  @ArrayMaxSize(60)
  @ArrayUnique()
  @IsString({ each: true })
  @Matches(/^[\w][\w .+/-]{0,39}$/, { each: true, message: 'each of $property must be a code such as LR-1' })
  configuration?: string[];

  @Text(10, { description: 'Code of the station where it is based.', optional: true })
  base?: string;
}

export class AircraftBody extends FitBody {
  @ApiProperty({ description: 'Registration, as it is painted.', example: 'Q-ABC' })
  @Matches(/^[A-Z0-9]+(-[A-Z0-9]+)*$/, { message: '$property must be capital letters, digits and hyphens, as Q-ABC' })
  @Matches(/^.{2,12}$/, { message: '$property must have 2 to 12 characters' })
  registration!: string;

  @Text(60, { description: 'Aircraft type, as the MEL for it says.' })
  type!: string;
}

export class FitChangeBody extends FitBody {
  @Text(300, { description: 'Why, such as the modification.' })
  reason!: string;
}

export class ServiceBody {
  @Text(300, { description: 'Why it leaves the fleet, or comes back.' })
  reason!: string;
}

export class StationBody {
  @ApiProperty({ description: 'Its code, as plans and movement messages name it.', example: 'QXA' })
  @Matches(/^[A-Z0-9]{2,10}$/, { message: '$property must be 2 to 10 capital letters and digits' })
  code!: string;

  @Text(80, { description: 'Its name.' })
  name!: string;

  @Text(64, { description: 'IANA zone of its clocks.', example: 'Europe/Paris' })
  zone!: string;
}

export class OrganisationBody {
  @Text(120, { description: 'Its name, as in its approval.' })
  name!: string;

  @Text(60, { description: 'Number of its approval.' })
  approval!: string;
}

export class FlightBody {
  @Matches(/^[A-Z0-9][A-Z0-9 ]{0,11}$/, { message: '$property must be capital letters and digits, as QX 107' })
  @ApiProperty({ description: 'Flight number.', example: 'QX 107' })
  number!: string;

  @Text(10, { description: 'Code of the station it leaves from.' })
  from!: string;

  @Text(10, { description: 'Code of the station it goes to.' })
  to!: string;

  @Instant({ description: 'Planned off-block.' })
  offBlockAt!: string;

  @Instant({ description: 'Planned on-block.' })
  onBlockAt!: string;

  @ApiPropertyOptional({ description: 'Airborne minutes planned.' })
  @IfGiven()
  @IsInt()
  @Min(1)
  @Max(1440)
  flightMinutes?: number;
}
