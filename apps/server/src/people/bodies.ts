import { Id, Text } from '../http/fields.js';

export class SignInBody {
  @Text(80, { description: 'Your sign-in name.' })
  name!: string;

  @Text(200, { description: 'Your secret.' })
  secret!: string;
}

export class ChooseOperatorBody {
  @Id({ description: 'One of your operators.' })
  operator!: string;
}

export class LeavingBody {
  @Text(300, { description: 'Why, for the record: no more than is needed.' })
  reason!: string;
}
