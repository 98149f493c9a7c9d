import { Nested, SignBody } from '../http/fields.js';

export class ConfirmZoneDataBody {
  @Nested(() => SignBody, { description: 'The signature under the statement that was shown.' })
  sign!: SignBody;
}
