// The letters home of a farm that has English alone: families read Spanish all the same.
import { render } from 'svelte/server';
import { expect, it } from 'vitest';
import { HOME_LANGUAGES } from '../../../shared/trip/papers/home.ts';
import PackPapers from '../../../src/components/trip/pack/PackPapers.svelte';
import { packProps } from '../../../src/site/tripPack.ts';
import { ownFolder, SMALL_FARM, writeFiles } from '../../src/build/smallFarm.ts';
import { paperCase } from '../../support/tripPaperCase.ts';

const languagesOf = (markup: string, paper: string): string[] =>
  [...markup.matchAll(new RegExp(`<article class="trip-paper of-${paper}[^"]*" lang="(\\w+)"`, 'g'))].map(
    ([, lang]) => lang ?? '',
  );

it('a farm with English alone prints the letter home in English and Spanish, all else in English', () => {
  const folder = ownFolder();
  writeFiles(folder, SMALL_FARM);
  process.env['FARM_DIR'] = folder;
  const props = packProps('en');
  expect(props.tongues.map(({ lang }) => lang)).toEqual(['en']);
  const { body } = render(PackPapers, {
    props: {
      props,
      papers: ['home', 'hygiene'],
      trip: paperCase(),
      paper: 'letter',
      address: null,
      qr: null,
    },
  });
  expect(languagesOf(body, 'home')).toEqual([...HOME_LANGUAGES]);
  expect(languagesOf(body, 'hygiene')).toEqual(['en']);
  expect(body).toContain('Nadie toma leche cruda.');
  expect(body).not.toContain('trip-papers.');
});
