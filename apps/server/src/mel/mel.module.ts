import { Module } from '@nestjs/common';
import { CardShelf } from '../cards/card-shelf.js';
import { MelShelf } from './mel-shelf.js';
import { MelController } from './mel.controller.js';
import { MelService } from './mel.service.js';

/** The MEL files of an operator and the revisions in force, and the cards in force beside them: each is held against the other. */
@Module({
  controllers: [MelController],
  providers: [MelService, MelShelf, CardShelf],
  exports: [MelShelf, CardShelf],
})
export class MelModule {}
