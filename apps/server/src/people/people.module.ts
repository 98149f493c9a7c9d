import { Module } from '@nestjs/common';
import { AccountsController } from './accounts.controller.js';
import { AccountsService } from './accounts.service.js';
import { AuthorisationsService } from './authorisations.service.js';
import { Challenges } from './challenges.js';
import { ErasuresService } from './erasures.service.js';
import { FailedAttempts } from './failed-attempts.service.js';
import { InvitationsController } from './invitations.controller.js';
import { InvitationsService } from './invitations.service.js';
import { MembersController } from './members.controller.js';
import { MembersService } from './members.service.js';
import { OneOffsService } from './one-offs.service.js';
import { PasskeysBeside } from './passkeys-beside.service.js';
import { PasskeysController } from './passkeys.controller.js';
import { PasskeysService } from './passkeys.service.js';
import { PeopleController } from './people.controller.js';
import { Secrets } from './secrets.js';
import { SignInService } from './sign-in.service.js';
import { SignOnController } from './sign-on.controller.js';
import { SignOnService } from './sign-on.service.js';
import { SignaturesController } from './signatures.controller.js';
import { WrittenNamesService } from './written-names.service.js';

/** People: accounts, ways to sign in and to sign, authorisations, erasure. */
@Module({
  controllers: [
    PeopleController,
    MembersController,
    AccountsController,
    InvitationsController,
    SignaturesController,
    PasskeysController,
    SignOnController,
  ],
  providers: [
    SignInService,
    FailedAttempts,
    MembersService,
    AccountsService,
    InvitationsService,
    AuthorisationsService,
    OneOffsService,
    ErasuresService,
    WrittenNamesService,
    Challenges,
    PasskeysService,
    PasskeysBeside,
    SignOnService,
    { provide: Secrets, useFactory: () => new Secrets(() => Date.now()) },
  ],
  exports: [SignInService, PasskeysBeside, ErasuresService],
})
export class PeopleModule {}
