import { alternator } from "./alternator.ts";
import { battery } from "./battery.ts";
import { breaker } from "./breaker.ts";
import { connector } from "./connector.ts";
import { diode } from "./diode.ts";
import { flasher } from "./flasher.ts";
import { fuse } from "./fuse.ts";
import { ground } from "./ground.ts";
import { heater } from "./heater.ts";
import { horn } from "./horn.ts";
import { ignitionSwitch } from "./ignitionSwitch.ts";
import { jumper } from "./jumper.ts";
import type { Kind } from "./kind.ts";
import { lamp } from "./lamp.ts";
import { led } from "./led.ts";
import { levelSwitch } from "./levelSwitch.ts";
import { limitSwitch } from "./limitSwitch.ts";
import { meterLeads } from "./meterLeads.ts";
import { controlModule } from "./module.ts";
import { motor } from "./motor.ts";
import { pageLink } from "./pageLink.ts";
import { potentiometer } from "./potentiometer.ts";
import { pressureSwitch } from "./pressureSwitch.ts";
import { pushButton } from "./pushButton.ts";
import { relay } from "./relay.ts";
import { resistor } from "./resistor.ts";
import { resistorPack } from "./resistorPack.ts";
import { rheostat } from "./rheostat.ts";
import { sender } from "./sender.ts";
import { solenoid } from "./solenoid.ts";
import { splice } from "./splice.ts";
import { standInLoad } from "./standInLoad.ts";
import { handSwitch } from "./switch.ts";
import { temperatureSwitch } from "./temperatureSwitch.ts";
import { twoFilamentLamp } from "./twoFilamentLamp.ts";
import { wiperMotor } from "./wiperMotor.ts";

/** Every kind of part, in the order in which a list shows them: supply, protection, control, loads, electronics, joins. */
export const KINDS: readonly Kind[] = [
  battery,
  alternator,
  fuse,
  breaker,
  handSwitch,
  ignitionSwitch,
  pushButton,
  limitSwitch,
  pressureSwitch,
  levelSwitch,
  temperatureSwitch,
  relay,
  flasher,
  motor,
  wiperMotor,
  lamp,
  twoFilamentLamp,
  led,
  heater,
  horn,
  solenoid,
  resistor,
  resistorPack,
  potentiometer,
  rheostat,
  diode,
  sender,
  controlModule,
  ground,
  splice,
  connector,
  pageLink,
  jumper,
  meterLeads,
  standInLoad,
];

const BY_NAME: ReadonlyMap<string, Kind> = new Map(KINDS.map((kind) => [kind.name, kind]));

/** The kind of this name, `relay`; undefined where the catalogue has none. */
export function kindOf(name: string): Kind | undefined {
  return BY_NAME.get(name);
}
