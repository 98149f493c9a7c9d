import { ApiProperty } from '@nestjs/swagger';
import { IsArray, ArrayMaxSize, IsString, Length } from 'class-validator';
import { Id, Instant, Text } from '../http/fields.js';

/** What somebody knows of the people at a station. */
export class StationCoverBody {
  @Id({ description: 'Who is there; absent: nobody authorised and equipped is.', optional: true })
  person?: string;

  @ApiProperty({ description: 'What the person has there.', type: [String] })
  @IsArray()
  @ArrayMaxSize(20)
  @IsString({ each: true })
  @Length(1, 80, { each: true })
  equipment!: string[];

  @Instant({ description: 'From when; absent: already there.', optional: true })
  from?: string;

  @Instant({ description: 'Until when, exclusive; absent: standing.', optional: true })
  until?: string;

  @Text(200, { description: 'Where this is known from, such as a roster with its day.' })
  source!: string;
}
