import { Module } from '@nestjs/common';
import { MelShelf } from './mel-shelf.js';
import { MelController } from './mel.controller.js';
import { MelService } from './mel.service.js';

/** The MEL files of an operator, and the revisions in force. */
@Module({
  controllers: [MelController],
  providers: [MelService, MelShelf],
  exports: [MelShelf],
})
export class MelModule {}
