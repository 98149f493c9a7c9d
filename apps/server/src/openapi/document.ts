import type { INestApplication } from '@nestjs/common';
import { DocumentBuilder, type OpenAPIObject, SwaggerModule } from '@nestjs/swagger';
import { CARD_SHAPES } from '../cards/cards.schema.js';
import { CORRECTION_SHAPES } from '../correcting/correction.schema.js';
import { DEFECT_SHAPES } from '../defects/defect.schema.js';
import { EXTENSION_SHAPES } from '../deferrals/extension.schema.js';
import { NEXT_FLIGHTS_SHAPES } from '../dispatch/next-flights.schema.js';
import { QUESTION_PLAN_SHAPES } from '../dispatch/question-plan.schema.js';
import { VERDICT_SHAPES } from '../dispatch/verdict.schema.js';
import { WHAT_HELPS_SHAPES } from '../dispatch/what-helps.schema.js';
import { ENTERING_SHAPES } from '../fleet/entering/entering.schema.js';
import { PLANNING_SHAPES } from '../fleet/planning/planning.schema.js';
import { OPENING_SHAPES } from '../opening/opening.controller.js';
import { FLEET_SHAPES } from '../fleet/fleet.schema.js';
import { STATION_SHAPES } from '../fleet/stations.schema.js';
import { ACCEPTANCE_SHAPES } from '../accepting/acceptances.schema.js';
import { RECURRENCE_SHAPES } from '../repetitive/recurrence.schema.js';
import { REGISTER_SHAPES } from '../register/register.schema.js';
import { SWAP_SHAPES } from '../fleet/swap.schema.js';
import { MEL_SHAPES } from '../mel/mel.schema.js';
import { ENGINE_SHAPES } from '../movements/engines/engines.schema.js';
import { MOVEMENT_SHAPES } from '../movements/movements.schema.js';
import { PEOPLE_SHAPES } from '../people/people.schema.js';
import { RECORD_SHAPES } from '../record/record.schema.js';
import { SETTINGS_SHAPES } from '../settings/settings.schema.js';
import { ZONE_DATA_SHAPES } from '../zone-data/zone-data.schema.js';
import { FEED_SHAPES } from '../watch/feed.schema.js';
import { REMINDER_SHAPES } from '../watch/reminders/reminder.schema.js';
import { instant, list, object, orNull, type Shape, text, whole, yesNo } from './shape.js';

const ABOUT_SHAPES: Record<string, Shape> = {
  ProblemType: object({
    type: text('Address of the type.'),
    title: text('What is wrong.'),
    status: whole('The HTTP status, always the same one.'),
    next: text('What to do next.'),
    paragraph: orNull(text('The paragraph it comes from.')),
  }),
  ProblemTypes: object({ problems: list({ $ref: '#/components/schemas/ProblemType' }) }),
  Health: object({ server: yesNo('The server answers.'), database: yesNo('The database answers.') }),
  Problem: {
    type: 'object',
    description: 'RFC 9457 problem details. `type` is the contract.',
    properties: {
      type: text('Address of the type.'),
      title: text('What is wrong.'),
      status: whole('The HTTP status.'),
      detail: text('This case.'),
      next: text('What to do next.'),
      errors: list(
        object({
          pointer: text('JSON pointer into the request, or into the file that was sent.'),
          reason: text('Reason.'),
          'entry?': text('MEL entry it stands in, for an error in a file.'),
          'card?': text('Work card it stands in, for an error in a file.'),
          'step?': text('Step of that card.'),
        }),
        'Each thing that is wrong.',
      ),
      paragraph: text('The paragraph the rule comes from.'),
      facts: { type: 'object', additionalProperties: true, description: 'The facts named in the detail, by name.' },
      statement: text('The statement to be signed, when another one was sent back.'),
      mayAnswer: list(text('role'), 'Who may do it instead.'),
      current: whole('The version that stands now.'),
      lockedUntil: instant('Until when the name is locked'),
      instance: text('This one occurrence, for the administrator.'),
    },
    required: ['type', 'title', 'status', 'detail'],
  },
};

/** Every named shape of an answer. */
export const SHAPES: Record<string, Shape> = {
  ...ABOUT_SHAPES,
  ...PEOPLE_SHAPES,
  ...FLEET_SHAPES,
  ...ENTERING_SHAPES,
  ...PLANNING_SHAPES,
  ...OPENING_SHAPES,
  ...REGISTER_SHAPES,
  ...ACCEPTANCE_SHAPES,
  ...RECURRENCE_SHAPES,
  ...DEFECT_SHAPES,
  ...CORRECTION_SHAPES,
  ...CARD_SHAPES,
  ...EXTENSION_SHAPES,
  ...SETTINGS_SHAPES,
  ...ZONE_DATA_SHAPES,
  ...FEED_SHAPES,
  ...REMINDER_SHAPES,
  ...VERDICT_SHAPES,
  ...WHAT_HELPS_SHAPES,
  ...NEXT_FLIGHTS_SHAPES,
  ...QUESTION_PLAN_SHAPES,
  ...STATION_SHAPES,
  ...SWAP_SHAPES,
  ...MEL_SHAPES,
  ...MOVEMENT_SHAPES,
  ...ENGINE_SHAPES,
  ...RECORD_SHAPES,
};

const PROBLEM_ANSWER = {
  description: 'A problem; see `/api/problems`.',
  content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
};

/** The OpenAPI 3.1 document of the interface. */
export function openApiDocument(app: INestApplication): OpenAPIObject {
  const config = new DocumentBuilder()
    .setOpenAPIVersion('3.1.0')
    .setTitle('Proviso')
    .setDescription(
      'Defects, deferrals and dispatch. It supports, and never replaces, the approved MEL, the maintenance manual, the commander and licensed certifying staff.',
    )
    .setVersion('1')
    .addCookieAuth('proviso_session')
    .build();
  const document = SwaggerModule.createDocument(app, config);
  const schemas = { ...document.components?.schemas, ...SHAPES };
  document.components = { ...document.components, schemas: schemas as never };
  for (const path of Object.values(document.paths)) {
    for (const operation of Object.values(path as Record<string, { responses?: Record<string, unknown> }>)) {
      if (operation.responses) operation.responses['default'] = PROBLEM_ANSWER;
    }
  }
  return document;
}
