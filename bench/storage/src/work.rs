//! The work: the statements that the book runs for "opened at a chair", its most frequent fact.

use crate::Answer;
use crate::driver::{Driver, Rusqlite, Value};
use crate::tree;
use sha2::{Digest, Sha256};

const TABLES: &str = include_str!("../../../crates/logbook/migrations/sqlite/0001_book.sql");
/// Pouches that the facts speak of, in turn.
const POUCHES: u32 = 10_000;
/// Facts read at a time when all are folded.
const BATCH: i64 = 1_000;
const COLUMNS: usize = 14;

fn id(kind: u8, number: u32) -> Value {
    let mut bytes = vec![kind; 16];
    bytes[12..].copy_from_slice(&number.to_be_bytes());
    Value::Bytes(bytes)
}

fn body(number: u32) -> String {
    let hex = |kind: u8| format!("{}{number:08x}", format!("{kind:02x}").repeat(12));
    format!(
        r#"{{"chair":{},"pouch":"{}","visit":"{}"}}"#,
        number % 12,
        hex(4),
        hex(5)
    )
}

/// The columns of one line, its hash last.
fn line(seq: i64, number: u32, prev: Vec<u8>) -> Answer<Vec<Value>> {
    let mut columns = vec![
        Value::Int(seq),
        id(1, 0),
        id(2, number),
        Value::Int(0),
        Value::Text("opened".to_owned()),
        Value::Int(1),
        Value::Int(1_748_851_200_000 + seq),
        Value::Int(1_748_851_200_000 + seq),
        id(3, 0),
        id(6, 0),
        Value::Text("scanned".to_owned()),
        Value::Text(body(number % POUCHES)),
        Value::Bytes(prev),
    ];
    columns.push(Value::Bytes(hash(&columns)?));
    Ok(columns)
}

/// The hash over the first thirteen columns, in the form that the book defines but for the order
/// of the fields.
fn hash(columns: &[Value]) -> Answer<Vec<u8>> {
    let mut digest = Sha256::new();
    let mut field = |bytes: &[u8]| {
        digest.update((bytes.len() as u64).to_be_bytes());
        digest.update(bytes);
    };
    for (at, column) in columns.iter().take(COLUMNS - 1).enumerate() {
        match column {
            Value::Null => field(&[]),
            Value::Int(number) => field(&number.to_be_bytes()),
            Value::Text(text) if at == 11 => {
                let tree: serde_json::Value = serde_json::from_str(text)?;
                field(&tree::bytes(&tree)?);
            }
            Value::Text(text) => field(text.as_bytes()),
            Value::Bytes(bytes) => field(bytes),
        }
    }
    Ok(digest.finalize().to_vec())
}

/// Makes a long book: tables, pouches, facts; nothing folded yet.
pub async fn make(driver: &mut Rusqlite, facts: u32) -> Answer<()> {
    driver.batch(TABLES)?;
    driver.run("BEGIN IMMEDIATE", &[]).await?;
    driver
        .run(
            "INSERT INTO kind (kind, used, washed) VALUES ('manicure', 0, 0)",
            &[],
        )
        .await?;
    for number in 0..POUCHES {
        driver
            .run(
                "INSERT INTO pouch (pouch, code, kind, pouched, hollow, state, packed_ms, \
                 packed_seq, packed_part, in_bin, contradicted) \
                 VALUES ($1, $2, 'manicure', 1, 0, 'ready', 0, 0, $2, 0, 0)",
                &[id(4, number), Value::Int(number.into())],
            )
            .await?;
    }
    let mut prev = vec![0; 32];
    for number in 0..facts {
        let columns = line(i64::from(number) + 1, number, prev)?;
        insert(driver, &columns).await?;
        prev = last_bytes(&columns)?;
    }
    driver.run("COMMIT", &[]).await
}

fn last_bytes(columns: &[Value]) -> Answer<Vec<u8>> {
    match columns.last() {
        Some(Value::Bytes(bytes)) => Ok(bytes.clone()),
        other => Err(format!("{other:?} is no hash").into()),
    }
}

async fn insert(driver: &mut impl Driver, columns: &[Value]) -> Answer<()> {
    driver
        .run(
            "INSERT INTO facts (seq, salon, act, part, kind, version, happened_ms, written_ms, \
             station, sign, known, body, prev, hash) \
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14)",
            columns,
        )
        .await
}

async fn one(
    driver: &mut impl Driver,
    sql: &'static str,
    values: &[Value],
    width: usize,
) -> Answer<Option<Vec<Value>>> {
    let mut found = None;
    driver
        .each(sql, values, width, &mut |row| {
            found = Some(row);
            Ok(())
        })
        .await?;
    Ok(found)
}

/// Reads every line in order and works out its hash.
pub async fn verify(driver: &mut impl Driver, facts: u32) -> Answer<()> {
    let mut seen = 0_u32;
    let mut prev = vec![0; 32];
    driver
        .each(
            "SELECT seq, salon, act, part, kind, version, happened_ms, written_ms, station, sign, \
             known, body, prev, hash FROM facts ORDER BY seq",
            &[],
            COLUMNS,
            &mut |columns| {
                seen += 1;
                let own = hash(&columns)?;
                if columns[12] != Value::Bytes(std::mem::take(&mut prev))
                    || columns[13] != Value::Bytes(own.clone())
                {
                    return Err(format!("line {seen} does not fit").into());
                }
                prev = own;
                Ok(())
            },
        )
        .await?;
    if seen == facts {
        Ok(())
    } else {
        Err(format!("{seen} lines").into())
    }
}

/// Folds every fact into empty tables, in one transaction.
pub async fn fold_all(driver: &mut impl Driver) -> Answer<()> {
    driver.run("BEGIN IMMEDIATE", &[]).await?;
    for table in [
        "DELETE FROM opening",
        "DELETE FROM pouch_step",
        "DELETE FROM kind_move",
    ] {
        driver.run(table, &[]).await?;
    }
    let mut last = 0;
    loop {
        let mut batch = Vec::new();
        driver
            .each(
                "SELECT seq, body FROM facts WHERE seq > $1 ORDER BY seq LIMIT $2",
                &[Value::Int(last), Value::Int(BATCH)],
                2,
                &mut |row| match (&row[0], &row[1]) {
                    (Value::Int(seq), Value::Text(body)) => {
                        let tree: serde_json::Value = serde_json::from_str(body)?;
                        batch.push((*seq, tree));
                        Ok(())
                    }
                    other => Err(format!("{other:?}").into()),
                },
            )
            .await?;
        let Some((newest, _)) = batch.last() else {
            break;
        };
        last = *newest;
        for (seq, _) in &batch {
            let number = u32::try_from(*seq - 1)?;
            fold(driver, *seq, number).await?;
        }
    }
    driver.run("COMMIT", &[]).await
}

/// What the book does to its tables for one opened pouch.
async fn fold(driver: &mut impl Driver, seq: i64, number: u32) -> Answer<()> {
    let (seq, pouch) = (Value::Int(seq), id(4, number % POUCHES));
    let visit = id(5, number);
    driver
        .run(
            "INSERT INTO opening (seq, pouch, visit, chair, opened_ms) \
             VALUES ($1, $2, $3, $4, $5)",
            &[
                seq.clone(),
                pouch.clone(),
                visit.clone(),
                Value::Int(3),
                Value::Int(1_748_851_200_000),
            ],
        )
        .await?;
    one(
        driver,
        "SELECT kind, state, run, released_ms, use_until_ms, visit, stopped, in_bin \
         FROM pouch WHERE pouch = $1",
        std::slice::from_ref(&pouch),
        8,
    )
    .await?;
    driver
        .run(
            "UPDATE pouch SET state = $1 WHERE pouch = $2",
            &[Value::Text("opened".to_owned()), pouch.clone()],
        )
        .await?;
    driver
        .run(
            "INSERT INTO pouch_step (pouch, seq, was) VALUES ($1, $2, $3) \
             ON CONFLICT (pouch, seq) DO NOTHING",
            &[pouch.clone(), seq.clone(), Value::Text("ready".to_owned())],
        )
        .await?;
    driver
        .run(
            "UPDATE pouch SET opened_ms = $1, visit = $2, chair = $3 WHERE pouch = $4",
            &[Value::Int(1), visit, Value::Int(3), pouch.clone()],
        )
        .await?;
    driver
        .run("UPDATE pouch SET in_bin = 1 WHERE pouch = $1", &[pouch])
        .await?;
    count(driver, seq).await
}

async fn count(driver: &mut impl Driver, seq: Value) -> Answer<()> {
    let kind = Value::Text("manicure".to_owned());
    driver
        .run(
            "INSERT INTO kind (kind, used, washed) VALUES ($1, 0, 0) \
             ON CONFLICT (kind) DO NOTHING",
            std::slice::from_ref(&kind),
        )
        .await?;
    one(
        driver,
        "SELECT used, washed, owned, owned_seq, counted_seq FROM kind WHERE kind = $1",
        std::slice::from_ref(&kind),
        5,
    )
    .await?;
    driver
        .run(
            "INSERT INTO kind_move \
             (seq, kind, used, washed, owned_was, owned_seq_was, counted_seq_was) \
             VALUES ($1, $2, $3, $4, $5, $6, $7) ON CONFLICT (seq, kind) DO UPDATE SET \
             used = kind_move.used + excluded.used, \
             washed = kind_move.washed + excluded.washed",
            &[
                seq,
                kind.clone(),
                Value::Int(1),
                Value::Int(0),
                Value::Null,
                Value::Null,
                Value::Null,
            ],
        )
        .await?;
    driver
        .run(
            "UPDATE kind SET used = $1, washed = $2 WHERE kind = $3",
            &[Value::Int(1), Value::Int(0), kind],
        )
        .await
}

/// One act after the other, each on the disk before the next.
pub async fn append(driver: &mut impl Driver, acts: u32) -> Answer<()> {
    for act in 0..acts {
        let number = 2_000_000_000 + act;
        driver.run("BEGIN IMMEDIATE", &[]).await?;
        one(
            driver,
            "SELECT MIN(seq), MAX(seq) FROM facts WHERE salon = $1 AND act = $2",
            &[id(1, 0), id(2, number)],
            2,
        )
        .await?;
        let last = "SELECT seq, hash FROM facts ORDER BY seq DESC LIMIT 1";
        let (seq, prev) = match one(driver, last, &[], 2).await?.as_deref() {
            Some([Value::Int(seq), Value::Bytes(hash)]) => (*seq, hash.clone()),
            other => return Err(format!("{other:?}").into()),
        };
        one(
            driver,
            "SELECT head_seq, head_hash, fold_version FROM fold_state",
            &[],
            3,
        )
        .await?;
        let columns = line(seq + 1, number, prev)?;
        insert(driver, &columns).await?;
        fold(driver, seq + 1, number).await?;
        driver
            .run(
                "INSERT INTO fold_state (salon, head_seq, head_hash, fold_version) \
                 VALUES ($1, $2, $3, 1) ON CONFLICT (salon) DO UPDATE SET \
                 head_seq = excluded.head_seq, head_hash = excluded.head_hash, \
                 fold_version = excluded.fold_version",
                &[
                    id(1, 0),
                    Value::Int(seq + 1),
                    Value::Bytes(last_bytes(&columns)?),
                ],
            )
            .await?;
        driver.run("COMMIT", &[]).await?;
    }
    Ok(())
}
