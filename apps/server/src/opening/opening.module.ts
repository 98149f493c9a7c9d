import { Module } from '@nestjs/common';
import { OpeningController } from './opening.controller.js';

/** What a server says that has no people yet. */
@Module({
  controllers: [OpeningController],
})
export class OpeningModule {}
