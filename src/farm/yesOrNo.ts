// A yes or no in the farm's files.
import * as z from 'zod';

/** True or false, written as `yes` and `no` too: YAML 1.2 reads these as words. */
export const yesOrNo = z
  .union([
    z.boolean(),
    z
      .string()
      .toLowerCase()
      .pipe(z.enum(['yes', 'no'])),
  ])
  .transform((value) => value === true || value === 'yes');
