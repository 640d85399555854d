import { type FormEvent, useCallback, useEffect, useState } from "react";
import { Button, Form, Input, Label, TextField } from "react-aria-components";
import type { ProjectHandle, ProjectVersion } from "../../../store/index.ts";
import { useStore } from "../../frame/index.ts";
import fieldStyles from "../../parts/lengthField/lengthField.module.css";
import styles from "./projects.module.css";
import { useProjectsTexts } from "./texts.ts";

/** Earlier versions of a back, to go back to; and how it is now, to be kept under a name. */
export function Versions({ project }: { readonly project: string }) {
  const texts = useProjectsTexts();
  const { versions, said, keep, goBack } = useVersions(project);
  const [name, setName] = useState("");
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() === "") return;
    keep(name.trim());
    setName("");
  };
  return (
    <section className={styles.versions} aria-label={texts.versions}>
      <p className={styles.quiet}>{texts.versionsWhat}</p>
      <Form className={`${styles.keepVersion}`} onSubmit={submit}>
        <TextField className={`${fieldStyles.field}`} value={name} onChange={setName} autoComplete="off">
          <Label className={`${fieldStyles.label}`}>{texts.versionName}</Label>
          <Input className={`${fieldStyles.input}`} maxLength={120} />
        </TextField>
        <Button className="button" type="submit">
          {texts.keepVersion}
        </Button>
      </Form>
      <p role="status">{said}</p>
      {versions !== null && versions.length === 0 && <p>{texts.noVersions}</p>}
      <ul className={styles.versionList}>
        {(versions ?? []).map((version) => (
          <li key={version.id}>
            <span>
              {texts.version(version)}
              <span className={styles.quiet}> {texts.versionHolds(version)}</span>
            </span>
            <Button className="button" aria-label={texts.goBackTo(version)} onPress={() => goBack(version)}>
              {texts.goBack}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}

type Listed = {
  /** The newest first; null: not read yet. */
  readonly versions: readonly ProjectVersion[] | null;
  readonly said: string;
  readonly keep: (name: string) => void;
  readonly goBack: (version: ProjectVersion) => void;
};

function useVersions(project: string): Listed {
  const texts = useProjectsTexts();
  const store = useStore();
  const [versions, setVersions] = useState<readonly ProjectVersion[] | null>(null);
  const [said, setSaid] = useState("");
  /** Opens the back for as long as `work` takes, and reads its versions again. */
  const withBack = useCallback(
    async (work: (handle: ProjectHandle) => Promise<string>) => {
      const handle = await store.open(project);
      if (handle === null) return;
      setSaid(await work(handle));
      setVersions([...(await handle.versions())].sort((one, other) => other.at - one.at));
      await handle.close();
    },
    [store, project],
  );
  useEffect(() => void withBack(async () => ""), [withBack]);
  return {
    versions,
    said,
    keep: (name) =>
      void withBack(async (handle) => ((await handle.saveNamedVersion(name)) ? "" : texts.notKept)),
    goBack: (version) =>
      void withBack(async (handle) =>
        (await handle.goBackTo(version.id)) && (await handle.saved())
          ? texts.wentBack(version)
          : texts.notKept,
      ),
  };
}
