// The main job as a workshop system would write it against the client that is generated from the contract.
import { AdministrationApi, CasesApi, Configuration, EventsApi } from './generated/index.js';

declare const process: { argv: string[] };

const reference = 'QS-TYPESCRIPT';
const configuration = new Configuration({ basePath: process.argv[2] });
const events = new EventsApi(configuration);

async function send(id: string, type: string, minute: number, data: object): Promise<void> {
  await events.postEvents({
    event: {
      specversion: '1.0',
      type: `org.axlecause.${type}.v1`,
      source: '/sites/quay-street',
      id: `typescript-${id}`,
      subject: reference,
      time: new Date(Date.UTC(2026, 2, 2, 8, minute)),
      data,
    },
  });
}

await new AdministrationApi(configuration).putSite({
  site: 'quay-street',
  siteView: { name: 'Quay Street', timeZone: 'Europe/London', currency: 'GBP', regime: 'gb-annual' },
});
await send('p', 'vehicle.presented', 15, {
  site: 'quay-street',
  reason: 'failed-inspection',
  vehicle: {
    category: 'N1',
    make: 'Corvane',
    axles: [
      { number: 1, steered: true, brake: 'disc-floating' },
      { number: 2, brake: 'drum-simplex', parkingBrake: 'cable-on-service-shoes' },
    ],
  },
});
await send('t', 'roller-test.recorded', 30, {
  stage: 'arrival',
  brake: 'service',
  axles: [{ number: 2, left: { peak: { value: 1610, unit: 'N' } }, right: { peak: { value: 590, unit: 'N' } } }],
});
await send('f', 'finding.recorded', 45, {
  stage: 'as-found',
  component: 'wheel-cylinder',
  condition: 'leaking',
  agent: 'brake-fluid',
  axle: 2,
  side: 'right',
});
const found = await new CasesApi(configuration).getCase({ reference });
const confirmed = (found.causes ?? [])
  .filter((cause: any) => cause.standing === 'confirmed')
  .map((cause: any) => cause.code);
console.log(`${found.status} ${found.version} [${confirmed.join(', ')}]`);
