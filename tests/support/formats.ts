import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import Ajv4 from 'ajv-draft-04';
import addFormats from 'ajv-formats';
import { XmlDocument, XmlValidateError, XsdValidator } from 'libxml2-wasm';
import type { Log } from 'sarif';
import { jsonReportSchema } from '../../src/report/json-schema.ts';

const schemaText = (name: string): string =>
  readFileSync(new URL(`./schemas/${name}`, import.meta.url), 'utf8');

// The published schema is written in draft 4, says `uniqueItems` of what has no type, and has a pattern with a bracket
// that only expressions without `u` take.
const sarifValidator = new Ajv4({ allErrors: true, strict: false, unicodeRegExp: false });
addFormats.default(sarifValidator);
const validateSarif = sarifValidator.compile(JSON.parse(schemaText('sarif-2.1.0.json')));
const isSarif = (data: unknown): data is Log => validateSarif(data);

/** A SARIF log as a program reads it; an error where it is not as the published schema says. */
export function sarifOf(text: string): Log {
  const log: unknown = JSON.parse(text);
  if (!isSarif(log)) throw new Error(JSON.stringify(validateSarif.errors, undefined, 2));
  return log;
}

const isJsonReport = new Ajv2020({ allErrors: true, strict: true }).compile(jsonReportSchema.toJSONSchema());

/** What a validator that knows nothing of us says against a JSON report; nothing where it fits its schema. */
export function againstJsonReport(text: string): readonly string[] {
  isJsonReport(JSON.parse(text));
  return (isJsonReport.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

/** What the XML Schema of JUnit reports has against a text. */
export function againstJunit(text: string): readonly string[] {
  const schema = XmlDocument.fromString(schemaText('junit.xsd'));
  const validator = XsdValidator.fromDoc(schema);
  try {
    const report = XmlDocument.fromString(text);
    try {
      validator.validate(report);
      return [];
    } finally {
      report.dispose();
    }
  } catch (error) {
    if (error instanceof XmlValidateError) return error.details.map(({ message }) => message);
    throw error;
  } finally {
    validator.dispose();
    schema.dispose();
  }
}

/** The values that an XPath finds in a JUnit report, read by a parser that knows nothing of us. */
export function inXml(text: string, path: string): readonly string[] {
  const report = XmlDocument.fromString(text);
  try {
    return report.find(path).map((node) => ('value' in node ? String(node.value) : node.content));
  } finally {
    report.dispose();
  }
}
