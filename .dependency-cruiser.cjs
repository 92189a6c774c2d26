/** The house's floors: an import runs downward only. One rule a room: what it never knows. */
const never = (name, comment, from, to) => ({
  name,
  comment,
  severity: 'error',
  from: { path: from },
  to: { path: to },
});

module.exports = {
  forbidden: [
    never(
      'measure-knows-nothing',
      'Floor 1 imports nothing of ours',
      '^src/measure/',
      '^(src/(?!measure/)|commands/)',
    ),
    never(
      'config-knows-measure',
      'The settings are floor 1',
      '^src/config',
      '^(src/(?!measure/|config)|commands/)',
    ),
    never(
      'calculator-is-pure',
      'Floor 2: pure functions over measures',
      '^src/calculator/',
      '^(src/(?!measure/|calculator/)|commands/)',
    ),
    never(
      'chat-below-platforms',
      'Floor 2: no platform, no store, no command',
      '^src/chat/',
      '^(src/(?!measure/|chat/)|commands/)',
    ),
    never(
      'guild-above-chat',
      'Floor 3: rules over facts',
      '^src/guild/',
      '^(src/(store|run|platforms|pictures|verbs|main)|commands/)',
    ),
    never(
      'pictures-above-calculator',
      'Floor 3: drawings of results',
      '^src/pictures/',
      '^(src/(store|run|platforms|guild|chat|verbs|main)|commands/)',
    ),
    never(
      'platforms-know-chat-only',
      'Floor 3: connect, read, render, send',
      '^src/platforms/',
      '^(src/(store|run|calculator|guild|verbs|main)|commands/)',
    ),
    never(
      'platforms-keep-apart',
      'No platform knows another; what lies beside them is for all',
      '^src/platforms/([^/]+)/',
      '^src/platforms/(?!$1/|[^/]+\\.ts$)',
    ),
    never(
      'store-knows-no-wording',
      'Floor 4: facts kept',
      '^src/store/',
      '^(src/(platforms|pictures|calculator|verbs|main)|commands/)',
    ),
    never(
      'run-knows-no-platform',
      'Floor 4: clock, health, shutdown',
      '^src/run/',
      '^(src/(platforms|pictures|calculator|verbs|main)|commands/)',
    ),
    never(
      'commands-know-no-store',
      'Floor 4: what a member can say',
      '^commands/',
      '^src/(store|run|platforms|verbs|main|config)',
    ),
    never(
      'commands-know-no-library',
      'Platforms and SQL are other rooms',
      '^commands/',
      'node_modules/(discord\\.js|matrix-js-sdk|kysely|better-sqlite3)',
    ),
    never(
      'calculator-knows-no-library',
      'No clock, no files, no network',
      '^src/(calculator|measure)/',
      '^node:|^(fs|path|http|https|net)$|node_modules',
    ),
    {
      name: 'no-circles',
      comment: 'A circle is no floor',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'no-lost-files',
      comment: 'Every file is reached',
      severity: 'error',
      from: { orphan: true, path: '^(src|commands)/' },
      to: {},
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { extensions: ['.ts', '.js'] },
  },
};
