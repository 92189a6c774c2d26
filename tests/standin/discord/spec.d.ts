/** The schemas of the published API description that the stand-in uses; the package ships no types for them. */
declare module 'discord-api-spec/zod' {
  export interface Schema {
    safeParse(
      value: unknown,
    ):
      | { success: true }
      | { success: false; error: { issues: { path: (string | number)[]; message: string }[] } };
  }
  export const ApplicationCommandUpdateRequestSchema: Schema;
  export const CreatePrivateChannelRequestSchema: Schema;
  export const MessageCreateRequestSchema: Schema;
  export const MessageEditRequestPartialSchema: Schema;
  export const IncomingWebhookInteractionRequestSchema: Schema;
  export const IncomingWebhookUpdateForInteractionCallbackRequestPartialSchema: Schema;
  export const CreateMessageInteractionCallbackRequestSchema: Schema;
  export const UpdateMessageInteractionCallbackRequestSchema: Schema;
  export const ApplicationCommandAutocompleteCallbackRequestSchema: Schema;
  export const ModalInteractionCallbackRequestSchema: Schema;
}
