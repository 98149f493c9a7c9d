import { Nested, PasskeyBody, Text } from '../http/fields.js';

export { PasskeyBody, SignBody } from '../http/fields.js';

export class NewPasskeyBody {
  @Text(60, { description: 'What you call it: the telephone, the key ring.' })
  label!: string;

  @Nested(() => PasskeyBody, { description: 'The answer of the browser.' })
  passkey!: PasskeyBody;
}

export class StatementShownBody {
  @Text(2000, { description: 'The statement that was shown, word for word.' })
  statement!: string;
}
