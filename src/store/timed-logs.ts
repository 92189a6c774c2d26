/**
 * A member's last logs with minutes that still stand, the latest first: guild, member, how many. Written out
 * because two libraries read it: the store's, and the quick one for a single ask.
 */
export const TIMED_LOGS = `SELECT line.pieces, line.minutes, held.counting, held.rounds, held.size
  FROM challenge_lines AS line
  JOIN challenges AS held ON held.guild = line.guild AND held.number = line.challenge
  LEFT JOIN challenge_lines AS back ON back.guild = line.guild AND back.challenge = line.challenge
    AND back.of = line.number AND back.kind = 'back'
  WHERE line.guild = ? AND line.member = ? AND line.kind = 'log' AND line.minutes IS NOT NULL
    AND held.counting <> 'patch' AND back.number IS NULL
  ORDER BY line.at DESC LIMIT ?`;
