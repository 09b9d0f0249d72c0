import type * as z from 'zod/mini';
import { type Problem, problemAt } from '../model/problem.js';

type Issue = z.core.$ZodIssue;

/** Most problems that are reported of one document: more than anybody reads, few enough to be quick. */
const MOST_PROBLEMS = 24;

function valueAt(document: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, step) => (typeof value === 'object' && value !== null ? Reflect.get(value, step) : undefined),
    document,
  );
}

/** What the schema would have accepted, in words. */
function allowedBy(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.expected === 'int' ? 'a whole number' : `a value of type ${issue.expected}`;
    case 'invalid_value':
      return issue.values.length === 1
        ? `only ${JSON.stringify(issue.values[0])}`
        : `one of ${issue.values.map((v) => JSON.stringify(v)).join(', ')}`;
    case 'too_small':
      return issue.origin === 'string' || issue.origin === 'array'
        ? `at least ${issue.minimum} long`
        : `at least ${issue.minimum}`;
    case 'too_big':
      return issue.origin === 'string' || issue.origin === 'array'
        ? `at most ${issue.maximum} long`
        : `at most ${issue.maximum}`;
    case 'invalid_format':
      return 'pattern' in issue && issue.pattern
        ? `text of the form ${issue.pattern}`
        : `text of the form ${issue.format}`;
    case 'invalid_union':
      return unionAllowed(issue);
    default:
      return issue.message ?? 'another value';
  }
}

function unionAllowed(issue: Issue & { code: 'invalid_union' }): string {
  if ('options' in issue && Array.isArray(issue.options))
    return `one of ${issue.options.map((v) => JSON.stringify(v)).join(', ')}`;
  const choices = issue.errors.flatMap((branch) => branch.slice(0, 1).map(allowedBy));
  return [...new Set(choices)].join(', or ') || 'another value';
}

/** The problems behind a schema's issues, in the document's order of finding, at most 24. */
export function schemaProblems(issues: readonly Issue[], document: unknown): Problem[] {
  return issues
    .flatMap((issue): Problem[] => {
      if (issue.code === 'unrecognized_keys') {
        return issue.keys.map((key) => {
          const path = [...issue.path, key];
          return { ...problemAt('unknown-key', path, valueAt(document, path), 'no such key here') };
        });
      }
      return [problemAt(issue.code.replaceAll('_', '-'), issue.path, valueAt(document, issue.path), allowedBy(issue))];
    })
    .slice(0, MOST_PROBLEMS);
}
