// The shape of what a coordinator writes; each field with the sentence that its writer needs.
import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
import * as z from 'zod';

const text = z.string().min(1);
// One text, or one for each plural form (`one`, `other`), or one of either for each variant (`us`, `metric`).
const plural = z.union([text, z.record(z.string(), text)]);
const forms = z.union([plural, z.record(z.string(), plural)]);

const level = z.strictObject({
  headline: forms.describe('The answer in seven words or so.'),
  why: z
    .strictObject({ first: forms, second: forms, third: forms })
    .describe('Three short sentences, one idea.'),
  concrete: forms
    .optional()
    .describe("The number tied to the child's world; its {n} is the number of children or of milkings."),
  belief: forms
    .optional()
    .describe('Where many people think otherwise: what is so, said kindly, in one sentence.'),
  think: forms.describe('One question to take along.'),
});

const questions = defineCollection({
  loader: glob({ pattern: '*/*.mdx', base: './content/questions' }),
  schema: z.strictObject({
    question: text.describe('What a visitor asks, in the words of a child.'),
    words: z.strictObject({
      unit: forms.describe('What the big number counts; stands right below it.'),
      younger: level.describe(
        'For children of five to eight: sentences of eight words, no decimals, no percent.',
      ),
      older: level.describe('For readers of nine and more: says how and why.'),
      missing: forms.describe('What to say where the book cannot answer.'),
      rule: forms.describe('How the number is made, so that a reader can redo it.'),
      change: forms.describe('What would change the number.'),
    }),
  }),
});

export const collections = { questions };
