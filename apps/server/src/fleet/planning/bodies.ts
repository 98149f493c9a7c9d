import { Text } from '../../http/fields.js';

export class FlightPlanBody {
  @Text(60_000, {
    description: 'Lines of flight, from, to, departure, arrival (UTC) and aircraft under a line with these names.',
    example: 'flight,from,to,departure,arrival,aircraft\nQX 107,QXA,QXB,2026-12-01T05:30Z,2026-12-01T07:10Z,Q-ABC',
  })
  text!: string;
}
