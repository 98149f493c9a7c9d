import { Body, Controller, Delete, Get, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyRequest } from 'fastify';
import { CurrentPerson, type SignedIn, WithoutOperator } from '../http/session.js';
import { ref } from '../openapi/shape.js';
import { NewPasskeyBody, SignBody, StatementShownBody } from './proof.bodies.js';
import { PasskeysService } from './passkeys.service.js';
import { namedOriginOf, PUBLIC_URL } from './site-address.js';
import { SignInService } from './sign-in.service.js';

/** Certified whenever a passkey is added: from then on it signs in the person's name. */
export const PASSKEY_STATEMENT = 'I add a passkey. From now on it signs me in, and signs in my name.';

@ApiTags('people')
@WithoutOperator()
@Controller('api/passkeys')
export class PasskeysController {
  constructor(
    private readonly passkeys: PasskeysService,
    private readonly signIn: SignInService,
    @Inject(PUBLIC_URL) private readonly publicUrl: string | null,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Your passkeys, and what is certified when one is added.' })
  @ApiOkResponse({ schema: ref('Passkeys') })
  async list(@CurrentPerson() { personId }: SignedIn): Promise<object> {
    const held = await this.passkeys.list(personId);
    return {
      statement: PASSKEY_STATEMENT,
      passkeys: held.map(({ id, label, createdAt, lastUsedAt }) => ({ id, label, createdAt, lastUsedAt })),
    };
  }

  @Post('challenge')
  @HttpCode(200)
  @ApiOperation({ summary: 'Prove yourself, to add a passkey: answers what the browser is asked for.' })
  @ApiOkResponse({ schema: ref('PasskeyAsked') })
  async toRegister(
    @CurrentPerson() person: SignedIn,
    @Body() sign: SignBody,
    @Req() request: FastifyRequest,
  ): Promise<object> {
    const origin = namedOriginOf(this.publicUrl, request);
    await this.signIn.proveFor(person, sign, PASSKEY_STATEMENT, request);
    return this.passkeys.toRegister(person, origin);
  }

  @Post()
  @HttpCode(204)
  @ApiOperation({ summary: 'Add the passkey that the browser made.' })
  register(
    @CurrentPerson() person: SignedIn,
    @Body() { passkey, label }: NewPasskeyBody,
    @Req() request: FastifyRequest,
  ): Promise<void> {
    return this.passkeys.register(person, passkey, label, namedOriginOf(this.publicUrl, request));
  }

  @Post('signature')
  @HttpCode(200)
  @ApiOperation({ summary: 'What the browser is asked for, to sign this statement with a passkey.' })
  @ApiOkResponse({ schema: ref('PasskeyAsked') })
  toSign(
    @CurrentPerson() person: SignedIn,
    @Body() { statement }: StatementShownBody,
    @Req() request: FastifyRequest,
  ): Promise<object> {
    return this.passkeys.toSign(person, statement, namedOriginOf(this.publicUrl, request));
  }

  @Delete(':id')
  @HttpCode(204)
  @ApiOperation({ summary: 'Remove one of your passkeys. What it signed stays signed.' })
  remove(@CurrentPerson() { personId }: SignedIn, @Param('id') id: string): Promise<void> {
    return this.passkeys.remove(personId, id);
  }
}
