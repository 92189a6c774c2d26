import { type APIMessage, InteractionResponseType, MessageFlags, type REST, Routes } from 'discord.js';
import type { Made } from './message.ts';
import { multipart } from './multipart.ts';

/** An event that is answered by its own token. */
export interface Token {
  readonly id: string;
  readonly applicationId: string;
  readonly token: string;
}

/** What a request to the platform carries: JSON alone, or files beside it. */
function carrying(json: Readonly<Record<string, unknown>>, { files }: Pick<Made, 'files'>) {
  if (files.length === 0) return { body: json };
  const { body, type } = multipart(json, files);
  return { body, headers: { 'Content-Type': type }, passThroughBody: true };
}

const flagsFor = (alone: boolean) => (alone ? { flags: MessageFlags.Ephemeral } : {});

/** Acknowledgements and what follows go by the event's token; the bot's own stays at home. */
const BY_TOKEN = { auth: false } as const;

const acknowledge = (rest: REST, { id, token }: Token, request: ReturnType<typeof carrying>) =>
  rest.post(Routes.interactionCallback(id, token), { ...BY_TOKEN, ...request });

/** Answers an event, to all or to the asker alone. */
export const answer = (rest: REST, event: Token, made: Made, alone: boolean) => {
  const type = InteractionResponseType.ChannelMessageWithSource;
  return acknowledge(rest, event, carrying({ type, data: { ...made.json, ...flagsFor(alone) } }, made));
};

/** Tells the platform that the answer is coming. */
export const promise = (rest: REST, event: Token, alone: boolean) => {
  const type = InteractionResponseType.DeferredChannelMessageWithSource;
  return acknowledge(rest, event, { body: { type, data: flagsFor(alone) } });
};

/** Changes the message whose button was pressed. */
export const change = (rest: REST, event: Token, made: Made) =>
  acknowledge(rest, event, carrying({ type: InteractionResponseType.UpdateMessage, data: made.json }, made));

/** Tells the platform that the message whose button was pressed will change. */
export const promiseChange = (rest: REST, event: Token) =>
  acknowledge(rest, event, { body: { type: InteractionResponseType.DeferredMessageUpdate } });

/** Puts the answer where it was promised. */
export const fillIn = (rest: REST, { applicationId, token }: Token, made: Made) =>
  rest.patch(Routes.webhookMessage(applicationId, token), { ...BY_TOKEN, ...carrying(made.json, made) });

/** Takes back what was promised where all can read, and answers the asker alone. */
export async function answerAloneInstead(
  rest: REST,
  { applicationId, token }: Token,
  made: Made,
): Promise<void> {
  await rest.delete(Routes.webhookMessage(applicationId, token), BY_TOKEN);
  await rest.post(Routes.webhook(applicationId, token), {
    ...BY_TOKEN,
    query: new URLSearchParams({ wait: 'true' }),
    ...carrying({ ...made.json, ...flagsFor(true) }, made),
  });
}

/** How a message is sent to a channel: in answer to another, and so that it is taken once. */
export interface Sending {
  readonly answering?: string;
  /** Within a few minutes the platform takes one message with the same nonce; sending again does not repeat it. */
  readonly nonce?: string;
}

/** Sends a message to a channel; gives its id. */
export async function sendTo(
  rest: REST,
  channel: string,
  made: Made,
  { answering, nonce }: Sending = {},
): Promise<string> {
  const json = {
    ...made.json,
    ...(answering ? { message_reference: { message_id: answering, fail_if_not_exists: false } } : {}),
    ...(nonce ? { nonce, enforce_nonce: true } : {}),
  };
  const sent = (await rest.post(Routes.channelMessages(channel), carrying(json, made))) as APIMessage;
  return sent.id;
}

/** Changes a message of ours in a channel. */
export const changeIn = (rest: REST, channel: string, message: string, made: Made) =>
  rest.patch(Routes.channelMessage(channel, message), carrying(made.json, made));
