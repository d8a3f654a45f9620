/** Where the server may be, best first. */
export interface ServerPlaces {
  readonly extensionFolder: string;
  readonly platform: string;
  readonly arch: string;
  /** The setting; empty when there is none, or when the folder is not trusted. */
  readonly setting: string;
  /** The PATH of the system. */
  readonly path: string;
}

/** The name of the folder of the bundled server, as in `server/linux-x64`. */
export const platformFolder = (platform: string, arch: string): string => `${platform}-${arch}`;

/** All the places to look at, in order. */
export function candidates(places: ServerPlaces): string[] {
  const windows = places.platform === 'win32';
  const slash = windows ? '\\' : '/';
  const name = windows ? 'hnote.exe' : 'hnote';
  return [
    [places.extensionFolder, 'server', platformFolder(places.platform, places.arch), name].join(slash),
    ...(places.setting === '' ? [] : [places.setting]),
    ...places.path.split(windows ? ';' : ':').filter((folder) => folder !== '').map((folder) => `${folder}${folder.endsWith(slash) ? '' : slash}${name}`),
  ];
}
