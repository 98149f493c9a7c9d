import { Module } from '@nestjs/common';
import { DefectsModule } from '../defects/defects.module.js';
import { DispatchModule } from '../dispatch/dispatch.module.js';
import { AuthorityDocumentsService } from './authority-documents.service.js';
import { ExtendingController, ExtensionsController } from './extensions.controller.js';
import { ExtensionsService } from './extensions.service.js';
import { NoticesService } from './notices.service.js';

/** Extensions, their notices, documents of the authority. */
@Module({
  imports: [DefectsModule, DispatchModule],
  controllers: [ExtendingController, ExtensionsController],
  providers: [ExtensionsService, NoticesService, AuthorityDocumentsService],
})
export class DeferralsModule {}
