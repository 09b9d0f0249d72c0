/** What failed, as short paragraphs: said at the end of a run, where a log that is cut short still has it. */

const MOST_LINES = 12;

// biome-ignore lint/suspicious/noControlCharactersInRegex: colours of a terminal begin with the escape character.
const COLOURS = /\u001b\[[0-9;]*m/g;

function paragraph(title, message) {
  const lines = message.replace(COLOURS, '').split('\n').slice(0, MOST_LINES);
  return [title, ...lines.map((line) => `    ${line}`)].join('\n');
}

/** Of the JSON report of the unit tests: each test that did not pass, and each file that could not be run. */
export function unitFailures({ testResults }) {
  return testResults.flatMap(({ name, status, message, assertionResults }) => {
    const tests = assertionResults.filter((each) => each.status !== 'passed');
    if (tests.length === 0 && status === 'failed') return [paragraph(name, message)];
    return tests.map((each) =>
      paragraph(`${name}: ${each.fullName}`, each.failureMessages.join('\n') || `it is ${each.status}`),
    );
  });
}

function specsOf(suite) {
  return [...(suite.specs ?? []), ...(suite.suites ?? []).flatMap(specsOf)];
}

/** Of the JSON report of the browser tests: each test that did not pass the first time. */
export function browserFailures({ suites, errors }) {
  const failed = suites.flatMap(specsOf).flatMap((spec) =>
    spec.tests
      .filter(({ status }) => status !== 'expected')
      .map(({ projectName, status, results }) => {
        const messages = results.flatMap((result) => result.errors.map(({ message }) => message));
        return paragraph(`${spec.file}:${spec.line}: ${spec.title} (${projectName})`, messages.join('\n') || status);
      }),
  );
  return [...errors.map(({ message }) => paragraph('the run', message)), ...failed];
}
