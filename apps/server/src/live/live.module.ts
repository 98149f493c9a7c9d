import { Module } from '@nestjs/common';
import { LiveController } from './live.controller.js';
import { LiveService } from './live.service.js';

/** What changed, told to pages that are open. */
@Module({
  controllers: [LiveController],
  providers: [LiveService],
})
export class LiveModule {}
