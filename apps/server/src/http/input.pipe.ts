import { ValidationPipe } from '@nestjs/common';
import type { ValidationError } from 'class-validator';
import { Problem } from './problem.js';

/** Checks every body, query and parameter against its class; keys that the class does not name are refused, not dropped. */
export function inputPipe(): ValidationPipe {
  return new ValidationPipe({
    whitelist: true,
    forbidNonWhitelisted: true,
    transform: true,
    stopAtFirstError: true,
    validationError: { target: false, value: false },
    exceptionFactory: (errors) => {
      const found = flatten(errors, '');
      return new Problem('invalid-input', found.map((f) => `${f.pointer}: ${f.reason}`).join('; '), {
        errors: found,
      });
    },
  });
}

function flatten(errors: ValidationError[], above: string): { pointer: string; reason: string }[] {
  return errors.flatMap((error) => {
    const pointer = `${above}/${error.property}`;
    const own = Object.values(error.constraints ?? {}).map((reason) => ({ pointer, reason }));
    return [...own, ...flatten(error.children ?? [], pointer)];
  });
}
