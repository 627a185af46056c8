/** The year of weather that `--weather` names, for the light through the joints. */
import { lightDemand } from "../codes/light-site.ts";
import type { Project } from "../project/schema/project.ts";
import { readEpw } from "../project/weather/epw.ts";
import type { LightInput } from "../proof/light/input.ts";
import { weatherYear } from "../proof/light/weather-year.ts";
import { message } from "../text/message.ts";
import { isRefusal, type Refusal } from "./answer.ts";
import { readText } from "./files.ts";
import type { Job } from "./job.ts";

/** Further off than this a file is another climate's (degrees). */
const FARTHEST_DEG = 3;

/** Nothing where no file is named. */
export async function weatherInput(job: Job, project: Project): Promise<LightInput | Refusal> {
  const name = job.options.weather;
  const { site } = project;
  if (name === undefined) return {};
  const file = await readText(name, job.io.cwd);
  if (isRefusal(file)) return file;
  const read = readEpw(file.text);
  if (!read.ok) {
    return {
      refused: message("light.weather.refused", { file: name, fault: read.fault }),
      hint: message("light.weather.mend"),
    };
  }
  const { place, latitudeDeg, longitudeDeg } = read.weather;
  const far = Math.max(
    Math.abs(latitudeDeg - site.latitudeDeg),
    Math.abs(longitudeDeg - site.longitudeDeg) * Math.cos((site.latitudeDeg * Math.PI) / 180),
  );
  if (far > FARTHEST_DEG) {
    const away = { file: name, place, latitude: latitudeDeg, longitude: longitudeDeg, site: site.place };
    return { refused: message("light.weather.elsewhere", away), hint: message("light.weather.near") };
  }
  return { weather: weatherYear(read.weather, lightDemand(project).air) };
}
