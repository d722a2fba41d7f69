// Many open pages in a process of their own: each listens to the desk and notes when it hears of an entry.
import { get } from 'node:http';

const [address = '', count = '0'] = process.argv.slice(2);
const now_ms = () => performance.timeOrigin + performance.now();
const heard: { doe: string; amount: string; at_ms: number }[] = [];
let open = 0;

for (let one = 0; one < Number(count); one += 1)
  get(address, { agent: false }, (response) => {
    open += 1;
    if (open === Number(count)) process.send?.({ open });
    let rest = '';
    response.setEncoding('utf8');
    response.on('data', (part: string) => {
      const at_ms = now_ms();
      const blocks = (rest + part).split('\n\n');
      rest = blocks.pop() ?? '';
      for (const block of blocks) {
        const told = /^event: entry\ndata: (.*)$/m.exec(block)?.[1];
        if (told === undefined) continue;
        const { doe, amount } = JSON.parse(told) as { doe: string; amount: { num: number; den: number } };
        heard.push({ doe, amount: `${amount.num}/${amount.den}`, at_ms });
      }
    });
  });

process.on('message', () => process.send?.({ heard: heard.splice(0) }));
