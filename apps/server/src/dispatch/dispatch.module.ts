import { Module } from '@nestjs/common';
import { MelModule } from '../mel/mel.module.js';
import { PeopleModule } from '../people/people.module.js';
import { BothJudges } from './both-judges.js';
import { DispatchController } from './dispatch.controller.js';
import { DispatchService } from './dispatch.service.js';
import { FactsService } from './facts.service.js';
import { JudgementsService } from './judgements.service.js';
import { NextFlightsService } from './next-flights.service.js';

/** May it fly: answers, questions and their facts, the next flights. */
@Module({
  imports: [MelModule, PeopleModule],
  controllers: [DispatchController],
  providers: [BothJudges, DispatchService, NextFlightsService, FactsService, JudgementsService],
  exports: [DispatchService, NextFlightsService],
})
export class DispatchModule {}
