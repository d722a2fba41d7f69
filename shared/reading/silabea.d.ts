// The types of the Spanish syllable splitter, which brings none.
declare module 'silabea' {
  const silabea: { getSilabas(word: string): { readonly numeroSilaba: number } };
  export default silabea;
}
