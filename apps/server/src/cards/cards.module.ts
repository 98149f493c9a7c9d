import { Module } from '@nestjs/common';
import { DefectsModule } from '../defects/defects.module.js';
import { MelModule } from '../mel/mel.module.js';
import { PeopleModule } from '../people/people.module.js';
import { CardsController } from './cards.controller.js';
import { CardsService } from './cards.service.js';
import { CardLibraryController } from './library.controller.js';
import { CardLibraryService } from './library.service.js';
import { SecondPersons } from './second-persons.service.js';

/** Work cards, and the library that they come from. */
@Module({
  imports: [DefectsModule, MelModule, PeopleModule],
  controllers: [CardsController, CardLibraryController],
  providers: [CardsService, SecondPersons, CardLibraryService],
})
export class CardsModule {}
