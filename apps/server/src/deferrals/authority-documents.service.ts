import { Injectable } from '@nestjs/common';
import { enterGrant } from '#deferrals';
import { newId } from '#store';
import { type Calling, signed } from '../defects/acting.js';
import { ActingService } from '../defects/acting.service.js';
import type { AuthorityDocumentBody } from './bodies.js';

/** What an authority allows beyond the deadline: entered as its document, and shown as such. */
@Injectable()
export class AuthorityDocumentsService {
  constructor(private readonly acting: ActingService) {}

  enter(calling: Calling, defectId: string, body: AuthorityDocumentBody): Promise<object> {
    return this.acting.act(calling, defectId, body.sign, async (scene) => {
      const by = await signed(scene, 'enter-document', 'defer', body.sign);
      const { kind, number, authority, limit, conditions = [], from, until } = body;
      const document = { kind, number, authority };
      const { flights = null, kindsOfFlight = null } = body;
      const grant = { document, limit, conditions, from, until, flights, kindsOfFlight };
      return enterGrant(scene.life, { id: newId(), by, ...grant }, scene.context);
    });
  }
}
