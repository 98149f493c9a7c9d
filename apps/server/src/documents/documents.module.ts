import { Module } from '@nestjs/common';
import { DefectsModule } from '../defects/defects.module.js';
import { DocumentsController } from './documents.controller.js';
import { DocumentsService } from './documents.service.js';
import { PlacardsController } from './placards.controller.js';
import { PlacardsService } from './placards.service.js';

/** Paper: placards and status sheets. */
@Module({
  imports: [DefectsModule],
  controllers: [DocumentsController, PlacardsController],
  providers: [DocumentsService, PlacardsService],
})
export class DocumentsModule {}
