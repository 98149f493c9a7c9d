import { Module } from '@nestjs/common';
import { DispatchModule } from '../dispatch/dispatch.module.js';
import { PeopleModule } from '../people/people.module.js';
import { RegisterViews } from './register-views.service.js';
import { RegisterController } from './register.controller.js';
import { RegisterService } from './register.service.js';

/** What is left altered on an aircraft, whoever owns it. */
@Module({
  imports: [DispatchModule, PeopleModule],
  controllers: [RegisterController],
  providers: [RegisterService, RegisterViews],
})
export class RegisterModule {}
