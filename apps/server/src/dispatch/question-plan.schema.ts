import { anything, list, object, oneOf, orNull, ref, type Shape, text } from '../openapi/shape.js';

const CODES = ['nothing-open', 'may-fly', 'after-work', 'not-settled', 'may-not-fly'];
const METHODS = ['least-expected', 'most-likely-to-settle', 'listed', 'nothing-to-ask'];
const share = (description: string): Shape => ({ type: 'number', minimum: 0, maximum: 1, description });

const reply = {
  words: text('The reply, or the replies that make the same difference.'),
  value: anything('One of them.'),
  weight: share('How likely it is taken to be.'),
};

export const QUESTION_PLAN_SHAPES: Record<string, Shape> = {
  QuestionNode: {
    description: 'What is asked, and what then; or the answer that is reached.',
    anyOf: [
      object({ ask: text('Key of the fact.'), then: list(object({ ...reply, next: ref('QuestionNode') })) }),
      object({ verdict: oneOf(CODES, 'The answer.') }),
    ],
  },
  QuestionPlan: object(
    {
      verdict: oneOf(CODES, 'The answer now.'),
      method: oneOf(METHODS, 'How the order was found.'),
      model: text('The same in words, with what is taken for granted.'),
      expected: orNull({
        type: 'number',
        minimum: 0,
        description: 'Questions expected until the answer is settled.',
      }),
      questions: list(
        object({
          fact: text('Key of the fact.'),
          question: text('The question.'),
          mayAnswer: list(text('role')),
          neededBy: list(text('Which conditions wait for it.')),
          replies: list(object(reply)),
          settles: share('How likely the reply settles the answer at once.'),
        }),
        'Those on which the answer still depends, the one to ask first in front.',
      ),
      tree: orNull(ref('QuestionNode')),
    },
    'Which question to ask next; made anew after each reply.',
  ),
};
