/** Crafts invented for this project, with the app. */
export const demos = [
  {
    file: 'heron.yaml',
    name: 'Heron',
    says: 'a 2.4 m one-person sled for counting birds, one 100 cc engine',
    text: () => import('../../../../demo/heron.yaml?raw').then((m) => m.default),
  },
  {
    file: 'teal.yaml',
    name: 'Teal',
    says: 'a 2.8 m kneel-on sled for cutting lake weed, two 60 cc engines on one shaft',
    text: () => import('../../../../demo/teal.yaml?raw').then((m) => m.default),
  },
  {
    file: 'dabchick.yaml',
    name: 'Dabchick',
    says: 'a 2.5 m one-person sled for sampling small lakes, one 99 cc two-stroke with a welded pipe',
    text: () => import('../../../../demo/dabchick.yaml?raw').then((m) => m.default),
  },
  {
    file: 'sandpiper.yaml',
    name: 'Sandpiper',
    says: 'a 2.3 m stand-on board for reading level staffs, two 41 cc engines straight on one steep impeller',
    text: () => import('../../../../demo/sandpiper.yaml?raw').then((m) => m.default),
  },
] as const
